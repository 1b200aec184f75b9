import { nameChord, type ChordNaming } from '../../music/chord/nameChord';
import { formatPitchName } from '../../music/noteName';
import type { Header } from '../../notation/header';
import { capoShift } from '../../notation/headerViews';
import { playedContext, soundingContext } from '../../notation/chordContext';
import { capital, lines, listed } from './text';

/** What some pitches make, as they sound and, under a full capo, as they are played. */
export interface BothNamings {
  readonly sounding: ChordNaming;
  readonly played: ChordNaming | undefined;
}

/** Names sounding pitches, given the highest string number first, under the key, tuning and capo of a header. */
export function nameBoth(midis: readonly number[], header: Header): BothNamings {
  const shift = capoShift(header);
  return {
    sounding: nameChord(midis, soundingContext(header)),
    played:
      shift === 0
        ? undefined
        : nameChord(
            midis.map((midi) => midi - shift),
            playedContext(header),
          ),
  };
}

/** The likeliest name; under a full capo the shape's name beside it: `E, played as D`. */
export function shortName({ sounding, played }: BothNamings): string {
  const name = firstName(sounding);
  return played && played.kind !== 'silence' ? `${name}, played as ${firstName(played)}` : name;
}

/** The likeliest name, so that a single note or a power chord is not taken for a major chord or a pitch. */
export function firstName(naming: ChordNaming): string {
  const [first] = naming.names;
  if (naming.kind === 'silence') return 'no pitch';
  if (naming.kind === 'unnamed' || !first) return `no everyday name (${namesOf(naming).join(' ')})`;
  if (naming.kind === 'power') return `power chord ${first.name}`;
  if (naming.kind !== 'note') return first.name;
  return `the note ${first.name}${first.words === '' ? '' : ` in ${first.words}`}`;
}

function namesOf(naming: ChordNaming): readonly string[] {
  return naming.notes.map(formatPitchName);
}

/** Everything about what some pitches make: name, words, shape, other names, notes from the bass up. */
export function chordParagraph(namings: BothNamings): string {
  const { sounding, played } = namings;
  if (sounding.kind === 'silence') return '';
  const [first, ...others] = sounding.names;
  const notes = namesOf(sounding).join(' ');
  if (sounding.kind === 'unnamed' || !first) {
    return lines('**No everyday name**', nearNames(sounding), `Notes from the bass up: ${notes}`);
  }
  if (sounding.kind === 'note') return lines(`**${capital(firstName(sounding))}**`, shapeLine(played));
  const words = first.words === '' ? '' : ` (${first.words})`;
  return lines(
    `**${first.name}**${words}`,
    shapeLine(played),
    others.length > 0 ? `Also: ${others.map(named).join('; ')}` : '',
    `Notes from the bass up: ${notes}`,
  );
}

function shapeLine(played: ChordNaming | undefined): string {
  const [first] = played?.names ?? [];
  if (played?.kind === 'note') return `Played as ${firstName(played)}`;
  return first ? `Played as ${first.name}${first.words === '' ? '' : ` (${first.words})`}` : '';
}

function nearNames({ names }: ChordNaming): string {
  return names.length > 0 ? `Could be heard as ${listed(names.map(({ name }) => name))}` : '';
}

function named({ name, words }: { readonly name: string; readonly words: string }): string {
  // The name says it already.
  return words === '' || name.endsWith('(no root)') ? name : `${name} (${words})`;
}
