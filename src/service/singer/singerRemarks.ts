import { VOICE_RANGES, type VoiceRange } from '../../music/voices';
import { formatNoteName } from '../../music/noteName';
import { formatKey } from '../../music/key';
import type { Slice } from '../change/slices';
import type { SingerRequest, SingerWay } from './singerAnswer';
import type { Tune } from './topLine';

interface Answered {
  readonly slices: readonly Slice[];
  readonly request: SingerRequest;
  readonly voice: VoiceRange | undefined;
  readonly tune: Tune | undefined;
  readonly tooWide: number;
  readonly ways: readonly SingerWay[];
}

/** What is to be known beside the ways. */
export function remarksFor({ slices, request, voice, tune, tooWide, ways }: Answered): string[] {
  const headers = slices.map(({ system }) => system.header);
  const remarks: string[] = [];
  const keys = new Set(headers.flatMap(({ key }) => (key ? [formatKey(key)] : [])));
  if (tooWide > 0)
    remarks.push(
      `The tune is ${steps(tooWide)} wider than the voice, so it goes beyond it in every key; what goes beyond it least stands first, and single notes can be sung an octave up or down.`,
    );
  if (voice && VOICE_RANGES.includes(voice))
    remarks.push(
      `A choir’s ${voice.name} sings from ${formatNoteName(voice.low)} to ${formatNoteName(voice.high)}; singers differ, so their own lowest and highest note tell better.`,
    );
  if (tune && voice && request.low === undefined)
    remarks.push(
      `The tune is taken from ${tune.from}; if that is not what is sung, give its lowest and highest note.`,
    );
  if (ways.some(({ lies }) => lies && lies.octaves !== 0))
    remarks.push('Singers put a tune into their own octave; where that is another one, it is told.');
  if (headers.some(({ capo }) => capo?.strings))
    remarks.push('The partial capo stays where it is, so that only the tuning can move the piece.');
  else if (headers.some(({ instrument }) => instrument.slide))
    remarks.push('Under a bar there is no capo, so that only the tuning can move the piece.');
  if (keys.size > 1) remarks.push('The keys are told for the first one; the others move with it.');
  if (keys.size === 0)
    remarks.push('No key is written; a key: field above the tab, such as key: G, tells in which it sounds.');
  return remarks;
}

function steps(count: number): string {
  const rounded = Math.round(count * 100) / 100;
  return `${rounded} half ${rounded === 1 ? 'step' : 'steps'}`;
}
