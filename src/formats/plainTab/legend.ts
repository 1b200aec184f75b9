/** What the text itself says of its signs. */
export interface Legend {
  /** `^` between frets. */
  readonly caret: 'bend' | 'hammer-on' | undefined;
  /** `7(9)` is a bend to the pitch of fret 9. */
  readonly bracketBends: boolean;
  /** `[12]` is a ghost note and no harmonic. */
  readonly squareGhosts: boolean;
  /** `>` is a slide. */
  readonly arrowSlides: boolean;
  /** `v` is a stroke or something else than vibrato. */
  readonly waveIsNot: boolean;
}

/**
 * Reads what the prose says of signs: `^ bend`, `7(9) = bend …`, `> means slide`.
 * @param prose lines that are no strings
 * @param runs what the strings hold, for signs that nothing explains
 */
export function readLegend(prose: readonly string[], runs: readonly string[]): Legend {
  const says = (sign: RegExp, meaning: RegExp): boolean =>
    prose.some((line) => sign.test(line) && meaning.test(line));
  return {
    caret: caretOf(says, runs),
    bracketBends:
      says(/\d\(\d+\)/, /bend/i) || says(/(?:brackets|parenthes[ei]s)/i, /bend/i) || says(/\(\s*\)/, /bend/i),
    squareGhosts: says(/\[\s*\d*\s*\]/, /ghost|soft|quiet/i),
    arrowSlides: says(/(?:^|\s)>(?:\s|$)/, /slide/i),
    waveIsNot: says(/(?:^|\s)v(?:\s|$)/i, /\b(?:down|up|stroke|pick)/i),
  };
}

/**
 * Without a word on it a caret is a bend where nothing follows it, else a hammer-on; common practice, no source.
 */
function caretOf(says: (sign: RegExp, meaning: RegExp) => boolean, runs: readonly string[]): Legend['caret'] {
  if (says(/\^/, /bend/i)) return 'bend';
  if (says(/\^/, /hammer|pull|slur/i)) return 'hammer-on';
  if (!runs.some((run) => run.includes('^'))) return undefined;
  const alone = runs.some((run) => /\d\^(?!\d)/.test(run));
  return alone ? 'bend' : 'hammer-on';
}
