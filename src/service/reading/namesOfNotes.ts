import { formatNoteName, formatPitchName, type NoteName } from '../../music/noteName';
import { spellMidi } from '../../music/spelling';
import type { Header } from '../../notation/header';
import { soundingSpelling } from '../../notation/headerViews';
import type { StringLine, Token } from '../../notation/parsedLine';
import type { NoteReading, SystemReading } from '../../notation/reading';

/** What stands in place of a token. */
export type TokenName = (token: Token) => string | undefined;

/** Half steps above a half step from which a pitch is told as between two names. */
const BETWEEN = 0.25;

/**
 * What a line's tokens are called by the notes that sound: frets by their note, harmonics by theirs in the same
 * brackets, bends by the note they reach behind a `^`, so that no `b` stands beside a flat. Undefined for a token that
 * stays as it is.
 * @param line index of the line in its system
 */
export function namesOfNotes(
  reading: SystemReading,
  header: Header,
  line: number,
  octaves: boolean,
): TokenName {
  const spelling = soundingSpelling(header);
  const format = (name: NoteName): string => (octaves ? formatNoteName(name) : formatPitchName(name));
  const nameOf = (midi: number): string => {
    const below = Math.floor(midi + BETWEEN);
    const between = midi - below >= BETWEEN;
    return format(spellMidi(between ? below : Math.round(midi), spelling)) + (between ? '+' : '');
  };
  const own = reading.notes.filter((note) => note.line === line);
  const sound = ({ pitches: [pitch] }: NoteReading): string | undefined => pitch && format(pitch.name);
  const numbered = new Map(own.map((note) => [note.numberStart, note]));
  const signs = reading.notes.flatMap(({ techniques }) => techniques.filter((sign) => sign.line === line));
  const aim = ({ start }: Token): string | undefined => {
    const to = signs.findLast((sign) => sign.start <= start && start < sign.end)?.to;
    return to === undefined ? undefined : nameOf(to);
  };

  return (token) => {
    switch (token.kind) {
      case 'number': {
        const note = numbered.get(token.start);
        if (!note) return aim(token);
        const name = sound(note);
        return name !== undefined && note.kind === 'artificial-harmonic' ? `<${name}>` : name;
      }
      case 'harmonic': {
        const note = own.find(({ start, end }) => start <= token.start && token.start < end);
        if (note?.kind === 'artificial-harmonic') return sound(note) === undefined ? undefined : '';
        const name = note && sound(note);
        return name === undefined ? undefined : `<${name}>`;
      }
      case 'bend':
      case 'pre-bend': {
        const name = aim(token);
        return name === undefined ? undefined : `${token.kind === 'bend' ? '^' : 'p^'}${name}`;
      }
      default:
        return undefined;
    }
  };
}

/** A token, and what stands in its place where it is something else. */
export interface RenamedToken {
  readonly token: Token;
  readonly text: string | undefined;
}

/** The tokens of a line with their names; one whose name stands in the token before goes into that. */
export function renamed({ tokens }: StringLine, name: TokenName): readonly RenamedToken[] {
  const named: RenamedToken[] = [];
  for (const token of tokens) {
    const text = name(token);
    const before = named.at(-1);
    if (text === '' && before) {
      const { token: first } = before;
      const whole = { ...first, end: token.end, width: first.width + token.width };
      named[named.length - 1] = { token: whole, text: before.text };
    } else named.push({ token, text });
  }
  return named;
}
