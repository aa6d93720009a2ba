/** The frame round every page: masthead with day and night, the pages as a table of contents, the banner. */
import type { ComponentChildren } from 'preact';
import { useLocation } from 'preact-iso';
import { theme } from '../keep.ts';
import { counted } from '../labels.ts';
import { outbox } from '../outbox/outbox.ts';
import { status } from '../status.ts';

interface Room {
  path: string;
  name: string;
  /** In the bar under the thumb on a phone; the others stand behind More. */
  bar: boolean;
}
/** Every page that stands in the contents, in their order. */
export const ROOMS: readonly Room[] = [
  { path: '/', name: 'Speak', bar: true },
  { path: '/review', name: 'Review', bar: true },
  { path: '/runs', name: 'Runs', bar: true },
  { path: '/load', name: 'Load', bar: true },
  { path: '/dogs', name: 'Dogs', bar: false },
  { path: '/search', name: 'Search', bar: false },
  { path: '/export', name: 'Export', bar: false },
  { path: '/settings', name: 'Settings', bar: false },
];

const isHere = (room: Room, path: string) =>
  room.path === '/' ? path === '/' : path === room.path || path.startsWith(`${room.path}/`);

function RoomLink({ room, path }: { room: Room; path: string }) {
  const waiting = room.path === '/review' ? (status.value?.waiting ?? 0) : 0;
  const unsent = room.path === '/' ? outbox.value.waiting.length : 0;
  const count = waiting || unsent;
  return (
    <a href={room.path} aria-current={isHere(room, path) ? 'page' : undefined}>
      {room.name}
      <span class="dots" />
      {count > 0 && (
        <span class="count">
          {count}
          <span class="unseen">{waiting ? ' to review' : ' not sent yet'}</span>
        </span>
      )}
    </a>
  );
}

function Nav() {
  const { path } = useLocation();
  const behind = ROOMS.filter((room) => !room.bar);
  return (
    <nav class="nav" aria-label="Pages">
      <ul class="contents">
        {ROOMS.map((room) => (
          <li key={room.path} class={room.bar ? '' : 'only-desk'}>
            <RoomLink room={room} path={path} />
          </li>
        ))}
        <li>
          <button
            type="button"
            class={`more ${behind.some((room) => isHere(room, path)) ? 'here' : ''}`}
            popovertarget="rooms"
          >
            More
          </button>
        </li>
      </ul>
      <div id="rooms" class="rooms" popover="auto">
        <ul class="contents">
          {behind.map((room) => (
            <li key={room.path}>
              <RoomLink room={room} path={path} />
            </li>
          ))}
        </ul>
      </div>
    </nav>
  );
}

/** What the store has to say about its files: on every page, until it is put right. */
function Banner() {
  const warnings = status.value?.warnings ?? [];
  if (warnings.length === 0) return null;
  return (
    <section class="told banner stack" aria-label="About the kept files">
      <p>{counted(warnings.length, 'thing')} to know about the kept files</p>
      {warnings.map((warning) => (
        <p key={warning}>{warning}</p>
      ))}
    </section>
  );
}

/** Day or night: one switch, on every page. */
function Switch() {
  const night = theme.value === 'night';
  return (
    <button
      type="button"
      class="button theme"
      aria-label={night ? 'Day: black on white' : 'Night: dim and dark'}
      onClick={() => {
        theme.value = night ? 'day' : 'night';
      }}
    >
      {night ? 'Day' : 'Night'}
    </button>
  );
}

/** Everything but the page itself. */
export function Frame({ children }: { children: ComponentChildren }) {
  const season = status.value?.season;
  return (
    <div class="frame">
      <a class="skip unseen button" href="#main">
        To the page
      </a>
      <header class="masthead">
        <a class="wordmark" href="/">
          Snackstop
          <small>
            {status.value?.kennel && <span>{status.value.kennel}</span>}
            {season && <span>season {season}</span>}
          </small>
        </a>
        <Switch />
      </header>
      <main class="main" id="main" tabIndex={-1}>
        <Banner />
        {children}
      </main>
      <Nav />
    </div>
  );
}
