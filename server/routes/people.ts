/** The calls for drivers and handlers. */

import { notesNaming } from '../kennel/mentions.ts';
import { addPerson, personOf, removePerson, renamePerson, retirePerson } from '../kennel/roster.ts';
import type { House } from '../notes/house.ts';
import { newRoutes } from './errors.ts';
import { allNotes, reread } from './kennel.ts';
import { deletePerson, getPeople, patchPerson, postPerson } from './roster-routes.ts';

const byName = (a: { name: string }, b: { name: string }) => a.name.localeCompare(b.name, 'en');

export function peopleRoutes(house: House) {
  const { store } = house;
  const naming = (name: string) => notesNaming(allNotes(store), name);
  return newRoutes()
    .openapi(getPeople, (c) => c.json({ people: [...store.kennel().people].sort(byName) }, 200))
    .openapi(postPerson, async (c) => {
      const { name } = c.req.valid('json');
      const person = await store.changeKennel((kennel) => addPerson(kennel, name, house.newId()), 'The person');
      return c.json({ person, reread: await reread(house, `${person.name} was added.`) }, 201);
    })
    .openapi(patchPerson, async (c) => {
      const { id } = c.req.valid('param');
      const { name, retired } = c.req.valid('json');
      const person = await store.changeKennel((kennel) => {
        const old = personOf(kennel, id);
        const [next, named] = name === undefined ? [kennel, old] : renamePerson(kennel, id, name, naming(old.name));
        return retired === undefined ? [next, named] : retirePerson(next, id, retired);
      }, 'The change of the person');
      return c.json({ person, reread: await reread(house, `What was changed of ${person.name} was kept.`) }, 200);
    })
    .openapi(deletePerson, async (c) => {
      const { id } = c.req.valid('param');
      const person = await store.changeKennel(
        (kennel) => removePerson(kennel, id, naming(personOf(kennel, id).name)),
        'The removal',
      );
      return c.json({ person, reread: await reread(house, `${person.name} was removed.`) }, 200);
    });
}
