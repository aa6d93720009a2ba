/** An address that is no page. */
import { Empty, Head } from '../parts/Told.tsx';

export function Missing() {
  return (
    <div class="stack">
      <Head title="No such page" />
      <Empty title="Nothing lives at this address">
        <p>The page may have moved, or a letter of its address is missing.</p>
        <a class="button" href="/">
          Speak
        </a>
      </Empty>
    </div>
  );
}
