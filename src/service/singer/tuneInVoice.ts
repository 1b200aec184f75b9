import { formatNoteName, midiOf } from '../../music/noteName';
import { spellMidi, type SpellingContext } from '../../music/spelling';
import type { VoiceRange } from '../../music/voices';
import type { TuneInVoice } from './singerAnswer';

/** How far an octave is looked for: a bass and a soprano are two apart. */
const OCTAVES = [0, -1, 1, -2, 2] as const;

/**
 * How a tune lies in a voice, in the octave in which it goes beyond the voice least; of equals the one that is played,
 * then the nearest. Singers put a tune into their own octave without a thought (common practice, no source).
 * @param low MIDI number of the tune's lowest note as it sounds
 */
export function tuneInVoice(
  low: number,
  high: number,
  voice: VoiceRange,
  spelling: SpellingContext,
): TuneInVoice {
  let best: { octaves: number; under: number; above: number } | undefined;
  for (const octaves of OCTAVES) {
    const under = low + 12 * octaves - midiOf(voice.low);
    const above = midiOf(voice.high) - high - 12 * octaves;
    if (!best || overshootOf({ under, above }) < overshootOf(best)) best = { octaves, under, above };
  }
  const { octaves, under, above } = best ?? { octaves: 0, under: 0, above: 0 };
  const note = (midi: number): string => formatNoteName(spellMidi(midi + 12 * octaves, spelling));
  const sung = { low: note(low), high: note(high) };
  return { ...sung, octaves, under, above, words: wordsOf(sung, octaves, under, above) };
}

/** Half steps by which a tune goes beyond the voice, below and above together. */
export function overshootOf({ under, above }: Pick<TuneInVoice, 'under' | 'above'>): number {
  return Math.max(0, -under) + Math.max(0, -above);
}

/** Half steps from the middle of the voice. */
export function offCentre({ under, above }: Pick<TuneInVoice, 'under' | 'above'>): number {
  return Math.abs(under - above) / 2;
}

function wordsOf(
  { low, high }: { readonly low: string; readonly high: string },
  octaves: number,
  under: number,
  above: number,
): string {
  const where = octaves === 0 ? 'Sung' : `Sung ${octaveWords(octaves)},`;
  const beyond = [
    ...(under < 0 ? [`${steps(-under)} below the voice`] : []),
    ...(above < 0 ? [`${steps(-above)} above ${under < 0 ? 'it' : 'the voice'}`] : []),
  ];
  const lies =
    beyond.length > 0
      ? beyond.join(' and ')
      : `${steps(under)} of room under, ${steps(above).replace(/ half steps?$/, '')} above`;
  return `${where} ${low}–${high}: ${lies}`;
}

function octaveWords(octaves: number): string {
  const way = octaves < 0 ? 'below' : 'above';
  return Math.abs(octaves) === 1 ? `in the octave ${way}` : `${Math.abs(octaves)} octaves ${way}`;
}

function steps(count: number): string {
  const rounded = Math.round(count * 100) / 100;
  return `${rounded} half ${rounded === 1 ? 'step' : 'steps'}`;
}
