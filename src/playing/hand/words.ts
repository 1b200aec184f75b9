import type { HandConstantName } from './constants';

/** What makes a step hard: a grip's term or a move's, with what it costs (not rounded). */
export interface Part {
  readonly name: HandConstantName;
  readonly amount: number;
  readonly cost: number;
}

/** Figures of a step that its words may need. */
export interface StepFigures {
  /** Millimetres between the lowest and the highest stopped place. */
  readonly stretch: number;
  /** Millimetres of the hand along the neck. */
  readonly travel: number;
  /** Seconds since the moment before. */
  readonly seconds: number;
}

/**
 * What is hardest about a step, in a player's words, from its dearest part.
 * @example whyHard([{ name: 'barre1', amount: 1, cost: 1.5 }], figures) // 'a barre with finger 1'
 */
export function whyHard(parts: readonly Part[], figures: StepFigures): string {
  const top = parts.reduce<Part | undefined>(
    (best, part) => (part.cost > (best?.cost ?? 0) ? part : best),
    undefined,
  );
  return top ? wordsFor(top, figures) : 'nothing is hard about it';
}

function wordsFor({ name, amount }: Part, { stretch, travel, seconds }: StepFigures): string {
  const times = Math.round(amount);
  switch (name) {
    case 'stretch':
    case 'beyond':
      return `a stretch of ${Math.round(stretch)} mm`;
    case 'travel':
    case 'shift':
    case 'freeShift':
      return `a shift of ${Math.round(travel)} mm in ${hundredths(seconds)} s${name === 'freeShift' ? ' under open strings' : ''}`;
    case 'barre1':
    case 'barre2':
    case 'barre3':
    case 'barre4':
      return `a barre with finger ${name.slice(-1)}`;
    case 'barreString':
      return `a barre over ${times + 2} strings`;
    case 'barreOver':
      return 'a barre beside a lower note on the next string';
    case 'barreMuted':
    case 'muted':
      return times === 1 ? 'a string to be kept silent' : `${times} strings to be kept silent`;
    case 'order':
      return 'fingers crossed at one fret';
    case 'skipped':
      return 'fingers side by side with one between them unused';
    case 'apart':
      return 'fingers far apart across the strings';
    case 'position':
    case 'linePosition':
      return 'a place high on the neck';
    case 'openHigh':
    case 'lineOpenHigh':
      return 'open strings under a hand high on the neck';
    case 'moved':
      return times === 1 ? 'a finger that changes its place' : `${times} fingers that change their places`;
    case 'setDown':
    case 'finger':
      return times === 1 ? 'a finger to set down' : `${times} fingers to set down`;
    case 'finger3':
    case 'lineFinger3':
      return 'the third finger';
    case 'finger4':
    case 'lineFinger4':
      return 'the little finger';
    case 'noIndex':
      return 'a grip without the index finger';
    case 'crossing':
      return times === 1 ? 'a change to the next string' : `a leap across ${times} strings`;
    case 'reach':
      return 'a finger that reaches a fret out of position';
    case 'cut':
      return times === 1 ? 'a note let go that should ring' : `${times} notes let go that should ring`;
    default:
      return 'the shape of the hand';
  }
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
