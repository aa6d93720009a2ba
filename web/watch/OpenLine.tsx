/** On the trail: what is open, in one line. The last answer is kept on the device, so that it is there without a connection. */
import { useEffect } from 'preact/hooks';
import { getWatch } from '../api.ts';
import { keptSignal } from '../keep.ts';
import { counted } from '../labels.ts';
import { dayWords } from '../times.ts';
import { dayOfEpisode, whatWords } from './words.ts';

interface Open {
  on: string;
  /** "Juniper left wrist", with the first day. */
  findings: { what: string; from: string }[];
}
const MOST = 4;
const kept = keptSignal<string>('open', '');

function keptOpen(): Open | undefined {
  try {
    const open = JSON.parse(kept.value) as Open;
    return Array.isArray(open.findings) && open.findings.length > 0 ? open : undefined;
  } catch {
    return undefined;
  }
}

/** Asks anew; what was known before stands where the server is away. */
async function refresh(): Promise<void> {
  try {
    const { on, episodes } = await getWatch({ state: 'open' });
    const findings = episodes.map((episode) => ({
      what: `${episode.dog} ${whatWords(episode).name}`,
      from: episode.from,
    }));
    kept.value = JSON.stringify({ on, findings } satisfies Open);
  } catch {
    // No connection: the line says of which day it is.
  }
}

export function OpenLine() {
  useEffect(() => void refresh(), []);
  const open = keptOpen();
  if (!open) return null;
  const { on, findings } = open;
  const more = findings.length - MOST;
  return (
    <p class="openline">
      <strong>Open on {dayWords(on)}:</strong>{' '}
      {findings
        .slice(0, MOST)
        .map(({ what, from }) => `${what}, day ${dayOfEpisode({ from }, on)}`)
        .join('; ')}
      {more > 0 && `; and ${counted(more, 'more', 'more')} in Load`}
    </p>
  );
}
