/** A dog's name that leads to its own page. */
export function DogName({ dog }: { dog: { dog: string; id: string } }) {
  return (
    <a class="dogname" href={`/dogs/${dog.id}`}>
      {dog.dog}
    </a>
  );
}
