import { harpName } from '@reedplate/layout';
import { positionOf } from '@reedplate/position';
import { placeAt } from '../src/place.js';
import { makeSession, type Session } from '../src/session.js';
import { readSetUp, type SetUp } from '../src/set-up.js';
import { type Band, makeBand } from './band.js';
import { showPlace, showRest } from './board.js';
import { fillChoices, readChoices, showChoices } from './choices.js';
import { byId, say } from './elements.js';
import { forget, recall, remember } from './kept.js';
import { makeListening } from './listening.js';
import { wear } from './look.js';
import { makePictures } from './pictures.js';
import { makeTakeDesk } from './take-desk.js';
import { speak } from './voice.js';

/** What a change of needs the band to begin anew. */
const OF_THE_MUSIC: ReadonlySet<string> = new Set(
  'key form ownBars variations tempo feel groove choruses countIn loopFrom loopTo click'.split(' '),
);
/** What a change of is only heard or seen. */
const OF_THE_PAGE: ReadonlySet<string> = new Set([
  'volume',
  'mute',
  'look',
  'ears',
  'latency',
  'voice',
]);
/** Seconds in which the last chord rings. */
const RING = 4;

fillChoices();
let setUp = readSetUp(recall('set-up'));
showChoices(setUp);
let theme = wear(setUp.look);
let session = firstSession();
let band: Band | undefined;
let called = '';
/** Whether what is chosen cannot be played: then what was before is. */
let isWrong = false;
const pictures = makePictures();
const trouble = byId('trouble', HTMLElement);
const playButton = byId('play', HTMLButtonElement);
const desk = makeTakeDesk(() => ({ session, theme, setUp }), say.bind(null, trouble));
const listening = makeListening(() => session, desk.judge);

function firstSession(): Session {
  try {
    return makeSession(setUp);
  } catch {
    // What was kept is no longer there: a tuning that has another name, say.
    forget('set-up');
    setUp = readSetUp(null);
    showChoices(setUp);
    return makeSession(setUp);
  }
}

function summarise(): void {
  const { form, song, harp } = session;
  const place = positionOf(harp, song.key);
  const words = `${form.name} in ${song.key}, ${harpName(harp)} harp in position ${place}, at ${setUp.tempo}`;
  say(byId('summary', HTMLElement), words);
}

const names = (of: SetUp) => Object.keys(of) as (keyof SetUp)[];

function change(): void {
  const before = setUp;
  setUp = readChoices();
  const changed = names(setUp).filter((name) => String(setUp[name]) !== String(before[name]));
  try {
    if (isWrong || changed.some((name) => !OF_THE_PAGE.has(name))) session = makeSession(setUp);
    isWrong = false;
    say(trouble, '');
  } catch (error) {
    isWrong = true;
    say(trouble, error instanceof Error ? error.message : 'that cannot be played');
    return;
  }
  remember('set-up', JSON.stringify(setUp));
  if (setUp.look !== before.look) theme = wear(setUp.look);
  if (setUp.ears !== before.ears) listening.close();
  summarise();
  setLevels();
  const isOther = changed.some((name) => OF_THE_MUSIC.has(name));
  if (isOther && band?.seconds() !== undefined) band.start(session);
  show();
}

function setLevels(): void {
  const names = { bass: 'Bass', comping: 'Comping', drums: 'Drums' } as const;
  band?.setLevels(setUp.volume, new Set(setUp.mute.map((part) => names[part])));
}

function show(): void {
  const seconds = band?.seconds();
  const place = seconds === undefined ? undefined : placeAt(session, Math.max(0, seconds));
  pictures.show(session, theme, place);
  if (place === undefined) showRest(theme);
  else showPlace(place, session.song, theme);
}

function frame(): void {
  const seconds = band?.seconds();
  if (band === undefined || seconds === undefined) return;
  const place = placeAt(session, Math.max(0, seconds));
  showPlace(place, session.song, theme);
  pictures.show(session, theme, place);
  listening.follow(place, band);
  const next =
    byId('board', HTMLElement).dataset.soon === 'true'
      ? (byId('next', HTMLElement).textContent ?? '')
      : '';
  if (next !== called && next !== '' && setUp.voice && !listening.isMicrophone())
    speak(next.replace(/ .*/u, ''));
  called = next;
  const { countIn, passes, passSeconds } = session;
  if (seconds > countIn + passes * passSeconds + RING) stop();
  else requestAnimationFrame(frame);
}

function stop(): void {
  band?.stop();
  say(playButton, 'Play');
  show();
}

async function play(): Promise<void> {
  if (band?.seconds() !== undefined) {
    stop();
    return;
  }
  band ??= makeBand();
  await band.context.resume();
  try {
    await listening.open(setUp, band);
    say(trouble, '');
  } catch (error) {
    const why = error instanceof Error ? error.message : 'it cannot be opened';
    say(trouble, `The band plays, but nothing is heard of you: ${why}`);
  }
  setLevels();
  band.start(session);
  say(playButton, 'Stop');
  requestAnimationFrame(frame);
}

function step(by: number): void {
  showChoices({
    ...setUp,
    tempo: Math.max(30, Math.min(300, Math.round(setUp.tempo * by))),
  } satisfies SetUp);
  change();
}

byId('choices', HTMLFormElement).addEventListener('submit', (event) => event.preventDefault());
for (const field of byId('choices', HTMLFormElement).elements) {
  if (field.id !== 'calibrate') field.addEventListener('change', change);
}
byId('volume', HTMLInputElement).addEventListener('input', change);
playButton.addEventListener('click', play);
byId('slower', HTMLButtonElement).addEventListener('click', () => step(0.9));
byId('faster', HTMLButtonElement).addEventListener('click', () => step(1 / 0.9));
byId('calibrate', HTMLButtonElement).addEventListener('click', async () => {
  band ??= makeBand();
  await band.context.resume();
  say(trouble, 'Listening to eight clicks …');
  try {
    const latency = await listening.calibrate(setUp, band);
    showChoices({ ...setUp, latency, ears: 'microphone' });
    change();
    say(trouble, `Sound comes ${latency} milliseconds late.`);
  } catch (error) {
    say(trouble, error instanceof Error ? error.message : 'it could not be measured');
  }
});
window.addEventListener('resize', show);
window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => {
  theme = wear(setUp.look);
  show();
});

const care = byId('care', HTMLElement);
care.hidden = recall('care') === 'read';
byId('care-read', HTMLButtonElement).addEventListener('click', () => {
  remember('care', 'read');
  care.hidden = true;
  byId('band', HTMLElement).focus();
});

summarise();
show();
if ('serviceWorker' in navigator) navigator.serviceWorker.register('./offline.js');
