import type { Header } from '../../notation/header';
import { soundingSpelling } from '../../notation/headerViews';
import type { NoteReading, SystemReading, Technique } from '../../notation/reading';
import { capital, pitchText } from './text';

/** How a note begins when a hammer-on, pull-off, tap or slide brings it. */
export function arrival(note: NoteReading): string {
  const kind = note.techniques.find(
    ({ kind: k }) => k === 'hammer-on' || k === 'pull-off' || k === 'tap',
  )?.kind;
  if (kind === 'hammer-on') return 'hammered on';
  if (kind === 'pull-off') return 'pulled off';
  if (kind === 'tap') return 'tapped';
  return note.joinedFrom === undefined ? 'struck' : 'slid into';
}

/** One sentence for each technique of a note, with its target; and how the note is reached. */
export function techniqueLines(note: NoteReading, reading: SystemReading, header: Header): readonly string[] {
  const from = note.joinedFrom === undefined ? undefined : reading.notes[note.joinedFrom];
  const told = note.techniques.map((technique) => sentence(technique, note, from, header));
  if (from && arrival(note) === 'slid into') told.unshift(`slid into from ${fretAndPitch(from, header)}`);
  return told.map(capital);
}

function sentence(
  technique: Technique,
  note: NoteReading,
  from: NoteReading | undefined,
  header: Header,
): string {
  const origin = from ? ` from ${fretAndPitch(from, header)}` : ' from nowhere';
  const target = targetText(technique, header);
  switch (technique.kind) {
    case 'hammer-on':
      return `hammered on${origin}`;
    case 'pull-off':
      return `pulled off${origin}`;
    case 'tap':
      return 'tapped';
    case 'trill':
      return `trill with ${target}`;
    case 'slide':
      return `slides to ${target}`;
    case 'slide-from-nowhere':
      return `slid into from ${technique.sign.startsWith('/') ? 'below' : 'above'}, from no set fret`;
    case 'slide-to-nowhere':
      return `slides ${technique.sign.startsWith('/') ? 'up' : 'down'} and off, to no set fret`;
    case 'bend':
      return `bends ${bendAmount(technique, note)}to ${target}`;
    case 'pre-bend':
      return `bent ${bendAmount(technique, note)}before it sounds, to ${target}`;
    case 'release':
      return `released to ${target}`;
    case 'vibrato':
      return 'vibrato';
  }
}

/** `fret 9, B4`, or the pitch alone. */
function targetText({ to, toFret }: Technique, header: Header): string {
  const pitch = to === undefined ? undefined : pitchText(to, soundingSpelling(header));
  const fret = toFret === undefined ? undefined : `fret ${toFret}`;
  return fret && pitch ? `${pitch} (${fret})` : (pitch ?? fret ?? 'a note that cannot be told');
}

/** `fret 5, E4`. */
function fretAndPitch(note: NoteReading, header: Header): string {
  const [pitch] = note.pitches;
  const fret = note.fret === undefined ? 'a muted stroke' : `fret ${note.fret}`;
  return pitch ? `${pitchText(pitch.midi, soundingSpelling(header))} (${fret})` : fret;
}

const AMOUNTS: Readonly<Record<number, string>> = {
  0.5: 'a quarter step',
  1: 'a half step',
  1.5: 'three quarters of a step',
  2: 'a whole step',
  3: 'a step and a half',
  4: 'two steps',
};

/** `a whole step `, as players say how far a string is bent. */
function bendAmount({ to }: Technique, note: NoteReading): string {
  const [own] = note.pitches;
  if (to === undefined || !own) return '';
  const amount = Math.round((to - own.midi) * 100) / 100;
  return `up ${AMOUNTS[amount] ?? `${amount} half steps`} `;
}
