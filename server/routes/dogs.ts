/** The roster's calls. */

import { entriesNaming } from '../kennel/mentions.ts';
import { addDog, changeDog, dogOf, learnHeard, removeDog } from '../kennel/roster.ts';
import type { House } from '../notes/house.ts';
import { newRoutes } from './errors.ts';
import { allNotes, reread } from './kennel.ts';
import { deleteDog, getDogs, patchDog, postDog, postHeard } from './roster-routes.ts';

const byName = (a: { name: string }, b: { name: string }) => a.name.localeCompare(b.name, 'en');

export function dogsRoutes(house: House) {
  const { store } = house;
  return newRoutes()
    .openapi(getDogs, (c) => c.json({ dogs: [...store.kennel().dogs].sort(byName) }, 200))
    .openapi(postDog, async (c) => {
      const dog = await store.changeKennel((kennel) => addDog(kennel, c.req.valid('json'), house.newId()), 'The dog');
      return c.json({ dog, reread: await reread(house, `${dog.name} was added.`) }, 201);
    })
    .openapi(patchDog, async (c) => {
      const { id } = c.req.valid('param');
      const dog = await store.changeKennel(
        (kennel) => changeDog(kennel, id, c.req.valid('json')),
        'The change of the dog',
      );
      return c.json({ dog, reread: await reread(house, `${dog.name} was changed.`) }, 200);
    })
    .openapi(postHeard, async (c) => {
      const { id } = c.req.valid('param');
      const dog = await store.changeKennel(
        (kennel) => learnHeard(kennel, id, c.req.valid('json').heard),
        'The form of the name',
      );
      return c.json({ dog, reread: await reread(house, 'The form of the name was learned.') }, 200);
    })
    .openapi(deleteDog, async (c) => {
      const { id } = c.req.valid('param');
      const dog = await store.changeKennel(
        (kennel) => removeDog(kennel, id, entriesNaming(allNotes(store), dogOf(kennel, id))),
        'The removal',
      );
      return c.json({ dog, reread: await reread(house, `${dog.name} was removed.`) }, 200);
    });
}
