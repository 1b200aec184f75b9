import { formatCapo } from '../../instrument/capo';
import { GUITAR } from '../../instrument/instruments';
import type { InForce } from './fieldsBetween';
import type { GuessKind, ImportGuess } from './importAnswer';
import { tuningName, type Setting } from './setting';
import type { PlainSystem } from './plainSystems';

const WORDS: Readonly<
  Record<Exclude<GuessKind, 'instrument' | 'tuning' | 'capo' | 'labels' | 'upside-down'>, string>
> = {
  alignment:
    'Frets that did not stand under each other were set together where the length of the lines says so.',
  bars: 'Bar lines and repeat signs of another kind were written as | |: and :|, and set under each other.',
  tabs: 'Tab characters were taken to reach to the next multiple of eight columns.',
  slides: 'Slides of another kind were written as / and \\.',
  bends:
    'Bends of another kind were written as b with the fret they get to, or with their part of a whole step.',
  signs:
    'Other signs were taken for hammer-ons, harmonics, vibrato or open strings; compare them with the old text.',
  frets: 'Numbers that no neck has were taken for several frets, one after the other.',
};

/** Collects what was guessed, each thing once. */
export class Guesses {
  private readonly said = new Map<string, ImportGuess>();

  /** What the signs and columns of a system left open. */
  add(kinds: Iterable<GuessKind>, line: number): void {
    for (const kind of kinds) {
      if (kind in WORDS) this.tell(kind, WORDS[kind as keyof typeof WORDS], line);
    }
  }

  /**
   * What the setting of a system left open.
   * @param inForce where it is pasted
   */
  addSetting(setting: Setting, { strings, labelled }: PlainSystem, inForce: InForce | undefined): void {
    const line = strings[0]?.line ?? 0;
    const { instrument, tuning, tuningBy, labelsAgree, upsideDown } = setting;
    const name = tuningName(tuning, instrument);
    const inTuning = name === 'standard' ? 'the usual tuning' : name;
    const by = labelled ? 'the labels' : `its ${strings.length} lines`;
    const there = inForce?.instrument ?? GUITAR;
    if (!setting.instrumentSaid && instrument !== there)
      this.tell(
        'instrument',
        `The instrument is taken for ${instrument.name}, from ${by}; no word names it.`,
        line,
      );
    if (tuningBy === 'words' && name !== 'standard')
      this.tell('tuning', `The tuning is taken for ${name}, from a sentence of the text.`, line);
    if (tuningBy === 'labels') this.tell('tuning', `The tuning is taken for ${name}, from the labels.`, line);
    if (setting.capoBy === 'words' && setting.capo !== undefined) {
      const words = `A capo at fret ${formatCapo(setting.capo)} is taken from a sentence of the text.`;
      this.tell('capo', words, line);
    }
    if (!labelled)
      this.tell(
        'labels',
        `The lines had no labels; they are taken for the strings of ${instrument.name} in ${inTuning}${why(setting, inForce)}.`,
        line,
      );
    else if (!labelsAgree)
      this.tell('labels', `The labels were not those of ${inTuning}; its notes stand there now.`, line);
    if (upsideDown)
      this.tell('upside-down', 'The lowest-placed string stood on top; the lines were turned over.', line);
  }

  private tell(kind: GuessKind, words: string, line: number): void {
    if (!this.said.has(words)) this.said.set(words, { kind, words, line });
  }

  all(): ImportGuess[] {
    return [...this.said.values()];
  }
}

/** Why lines without labels took the tuning in force where they were pasted, or could not. */
function why({ tuning, tuningBy }: Setting, inForce: InForce | undefined): string {
  if (tuningBy === 'there') return ', which is in force there';
  const there = inForce?.tuning.strings.length;
  if (tuningBy !== 'usual' || there === undefined || there === tuning.strings.length) return '';
  return `, since the tuning in force there has ${there} strings`;
}
