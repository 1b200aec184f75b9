import { retuningCaution } from '../../instrument/retuningCaution';
import { formatKey, readKey, transposeKey, type Key } from '../../music/key';
import { formatNoteName, midiOf, parseNoteName, pitchClassOf } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import { readVoice, readVoiceRange, type VoiceRange } from '../../music/voices';
import { capoShift, soundingSpelling } from '../../notation/headerViews';
import type { TabDocument } from '../../notation/tabDocument';
import { NOTHING_THERE } from '../change/change';
import { slicesIn, type Slice } from '../change/slices';
import type { Settings } from '../records';
import type { ServiceError } from '../serviceApi';
import { createMover, type Move } from './moveAll';
import { raisedBy } from './applyFit';
import { ranked, type Ranked } from './ranking';
import { remarksFor } from './singerRemarks';
import type { SingerAnswer, SingerRequest, SungRange } from './singerAnswer';
import { tuneOf, type Tune } from './topLine';
import { tuneInVoice } from './tuneInVoice';
import { movesFor, moveTeller } from './ways';

/** How high a capo is thought of, where nothing is said: beyond it little neck is left. An engineering value. */
const HIGHEST_CAPO = 7;

/**
 * Ways to bring a tune to a singer with every shape in its place: a capo, another pitch for all strings, or both; best
 * first: what goes least beyond the voice, then what lies nearest to its middle for the least trouble.
 * @example fitSinger(document, { range: undefined, voice: 'alto', low: 'D4', high: 'E5' }, settings).ways[0].title // 'Tune all strings down 2 half steps'
 */
export function fitSinger(
  document: TabDocument,
  request: SingerRequest,
  settings: Settings,
): SingerAnswer | ServiceError {
  const slices = slicesIn(document, request.range);
  if (slices.length === 0) return { error: NOTHING_THERE };
  const voice = voiceOf(request);
  if (voice && 'error' in voice) return voice;
  const key = keyOf(request, slices);
  if (key && 'error' in key) return key;
  if (!voice && !key) return { error: NOTHING_SAID };
  const tune = tuneFor(document, request, slices);
  if (tune && 'error' in tune) return tune;
  if (voice && !tune) return { error: NO_TUNE };
  const highest = request.highestCapo ?? HIGHEST_CAPO;
  if (!Number.isInteger(highest) || highest < 0 || highest > 36)
    return { error: 'The highest capo is a fret from 0 to 36, such as 5.' };
  const spelling = soundingSpelling(slices[0]?.system.header ?? document.headerAt(0));
  const mover = createMover(settings);
  const tell = moveTeller(slices, request.range, mover);
  const told = (move: Move): Ranked => {
    const way = tell(move);
    const up = way.halfSteps;
    // Notes are spelled as the key is that they are told beside.
    const key = way.sounds === null ? undefined : readKey(way.sounds);
    const sung = {
      key: key?.ok === true ? key.value : undefined,
      tuningNames: up === 0 ? spelling.tuningNames : [],
    };
    const lies = voice && tune ? tuneInVoice(tune.low + up, tune.high + up, voice, sung) : null;
    return { move, way: { ...way, lies } };
  };
  const here = told({ capoBy: 0, tuningBy: 0 });
  const moves = movesFor(slices, highest, mover).filter(
    ({ capoBy, tuningBy }) => !key || (capoBy + tuningBy - key.up) % 12 === 0,
  );
  const best = ranked(moves.map(told));
  const ways = best.map(({ way }) => way);
  const raised = best.map(({ move }) => raisedBy(slices, mover(move), move.tuningBy));
  const caution = retuningCaution(Math.max(0, ...raised), 'Some of these tunings raise');
  const tooWide =
    voice && tune ? Math.max(0, tune.high - tune.low - (midiOf(voice.high) - midiOf(voice.low))) : 0;
  return {
    voice: voice ? rangeOfVoice(voice) : null,
    tune: tune ? rangeOfTune(tune, slices) : null,
    parts: partsOf(document),
    here: here.way,
    ways,
    tooWide,
    remarks: remarksFor({ slices, request, voice, tune, tooWide, ways }),
    cautions: caution === undefined ? [] : [caution],
  };
}

const NOTHING_SAID =
  'Say what suits the singer: a voice such as alto, the lowest and highest note such as A3-D5, or a key such as Bb.';
const NO_TUNE =
  'There is no tune to be found in the passage; give its lowest and highest note as the piece sounds now, such as D4 and E5.';

function voiceOf({ voice, compass }: SingerRequest): VoiceRange | ServiceError | undefined {
  const text = compass ?? voice;
  if (text === undefined) return undefined;
  const read = compass === undefined ? readVoice(text) : readVoiceRange(text);
  return read.ok ? read.value : { error: read.error.message };
}

/** By how many half steps the piece goes up to the key that was asked for, 0 … 11. */
function keyOf(
  { key }: SingerRequest,
  slices: readonly Slice[],
): { readonly up: number; readonly key: Key } | ServiceError | undefined {
  if (key === undefined) return undefined;
  const read = readKey(key);
  if (!read.ok) return { error: read.error.message };
  const header = slices.find(({ system }) => system.header.key)?.system.header;
  if (!header?.key)
    return {
      error:
        'The piece has no key to start from; write a key: field above it, such as key: G, or give the voice instead.',
    };
  const sounding = transposeKey(header.key, capoShift(header));
  if (read.value.mode !== sounding.mode)
    return {
      error: `The piece sounds in ${formatKey(sounding)}, and shapes that stay keep its mode; give a key such as ${formatKey({ ...read.value, mode: sounding.mode })}.`,
    };
  const up = (pitchClassOf(read.value.tonic) - pitchClassOf(sounding.tonic) + 12) % 12;
  return { up, key: read.value };
}

function tuneFor(
  document: TabDocument,
  { low, high, tunePart, range }: SingerRequest,
  slices: readonly Slice[],
): Tune | ServiceError | undefined {
  if (low !== undefined || high !== undefined) {
    const first = parseNoteName((low ?? '').trim());
    const second = parseNoteName((high ?? '').trim());
    if (!first || !second)
      return {
        error:
          'Give both the lowest and the highest note of the tune with their octaves, such as D4 and E5; C4 is middle C.',
      };
    const midis = [midiOf(first), midiOf(second)];
    return { low: Math.min(...midis), high: Math.max(...midis), from: 'the tune' };
  }
  if (tunePart !== undefined) {
    const names = document.parts.filter((name) => name !== undefined);
    const known = names.find((name) => name.toLowerCase() === tunePart.trim().toLowerCase());
    if (known === undefined)
      return {
        error:
          names.length === 0
            ? 'The file has no parts with names; give the lowest and highest note of the tune instead.'
            : `There is no part “${tunePart.trim()}”; the parts are ${names.join(', ')}.`,
      };
    // The tune may stand in a part that is not moved with the passage.
    return tuneOf(document, range ? slicesIn(document, undefined) : slices, known);
  }
  return tuneOf(document, slices, undefined);
}

function partsOf({ parts, systems }: TabDocument): readonly string[] {
  const played = systems.filter(({ reading }) => reading.notes.length > 0);
  return parts.flatMap((name) =>
    name !== undefined && played.some(({ header }) => header.part === name) ? [name] : [],
  );
}

function rangeOfVoice({ name, low, high }: VoiceRange): SungRange {
  return {
    name,
    low: formatNoteName(low),
    high: formatNoteName(high),
    lowMidi: midiOf(low),
    highMidi: midiOf(high),
  };
}

function rangeOfTune({ low, high, from }: Tune, slices: readonly Slice[]): SungRange {
  const header = slices[0]?.system.header;
  const note = (midi: number): string =>
    formatNoteName(spellMidi(midi, header ? soundingSpelling(header) : { key: undefined, tuningNames: [] }));
  return { name: from, low: note(low), high: note(high), lowMidi: low, highMidi: high };
}
