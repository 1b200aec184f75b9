import type { RunSign } from './runSigns';

/** A bar of a system, before its columns are settled. */
export interface LooseBar {
  /** The signs of each line. */
  readonly lines: readonly (readonly RunSign[])[];
  /** Columns that each line took. */
  readonly widths: readonly number[];
}

/** A bar as it is to be written. */
export interface AlignedBar {
  /** What stands on each line; all are as wide. */
  readonly texts: readonly string[];
  /** The new column of each old one; its last entry is the width. */
  readonly columns: readonly number[];
  /** Whether notes sound together that did not stand together. */
  readonly moved: boolean;
}

/**
 * Settles the columns of a bar: those of the text, or, where a fret of two digits pushed the rest of its own line on,
 * those before it did. What needs more room than it had gets it on every line.
 */
export function alignBar({ lines, widths }: LooseBar): AlignedBar {
  const narrow = lines.map(withoutSecondDigits);
  const narrowWidths = widths.map((width, i) => width - secondDigits(lines[i] ?? []));
  const there = widths.map((_, i) => i).filter((i) => (widths[i] ?? 0) > 0);
  const uneven = new Set(there.map((i) => widths[i])).size > 1;
  const even = new Set(there.map((i) => narrowWidths[i])).size === 1;
  const pushed = uneven && (even || moments(narrow) < moments(lines));
  const moved = pushed && moments(narrow) !== moments(lines);
  const width = Math.max(1, ...(pushed ? narrowWidths : widths));
  return { ...laid(pushed ? narrow : lines, width), moved };
}

function secondDigits(signs: readonly RunSign[]): number {
  return signs.reduce((sum, sign) => sum + extra(sign), 0);
}

function extra({ kind, text, width }: RunSign): number {
  return kind === 'note' && /^\d\d$/.test(text) ? width - 1 : 0;
}

function withoutSecondDigits(signs: readonly RunSign[]): RunSign[] {
  let pushed = 0;
  return signs.map((sign) => {
    const column = sign.column - pushed;
    pushed += extra(sign);
    return { ...sign, column };
  });
}

/** How many columns notes begin on. */
function moments(lines: readonly (readonly RunSign[])[]): number {
  return new Set(lines.flat().flatMap(({ kind, column }) => (kind === 'note' ? [column] : []))).size;
}

/** Sets columns from left to right, each as early as everything on it allows. */
function laid(lines: readonly (readonly RunSign[])[], width: number): Pick<AlignedBar, 'texts' | 'columns'> {
  const columns: number[] = [];
  const next = lines.map(() => 0);
  const pens = lines.map(() => new Pen());
  for (let column = 0; column <= width; column++) {
    let at = column === 0 ? 0 : (columns[column - 1] ?? 0) + 1;
    const here: [Pen, RunSign][] = [];
    lines.forEach((signs, i) => {
      const pen = pens[i];
      if (!pen) return;
      for (let sign = signs[next[i] ?? 0]; sign && sign.column <= column; sign = signs[next[i] ?? 0]) {
        next[i] = (next[i] ?? 0) + 1;
        here.push([pen, sign]);
        if (sign.kind !== 'suffix') at = Math.max(at, pen.free(sign));
      }
    });
    if (column === width) at = Math.max(at, ...pens.map(({ length }) => length));
    for (const [pen, sign] of here) pen.put(sign, at);
    columns.push(at);
  }
  const end = columns.at(-1) ?? 0;
  return { texts: pens.map((pen) => pen.text(end)), columns };
}

/** Writes one line of a bar. */
class Pen {
  private readonly pieces: string[] = [];
  length = 0;
  private last: RunSign | undefined;

  /** The first column a sign may have. */
  free({ apart }: RunSign): number {
    return this.length + (apart ? 1 : 0);
  }

  put(sign: RunSign, at: number): void {
    const touching = this.last && this.last.column + this.last.width >= sign.column;
    if (touching === true && sign.kind === 'slide') this.fillTo(at, sign.text.charAt(0));
    else if (sign.kind !== 'suffix' || !touching)
      this.fillTo(at, touching === true && this.last?.kind === 'slide' ? this.last.text.charAt(0) : '-');
    this.add(sign.text);
    this.last = sign;
  }

  text(width: number): string {
    this.fillTo(width, '-');
    return this.pieces.join('');
  }

  /** A slide is drawn out to the notes it joins. */
  private fillTo(at: number, filling: string): void {
    if (at > this.length) this.add(filling.repeat(at - this.length));
  }

  private add(text: string): void {
    this.pieces.push(text);
    this.length += text.length;
  }
}
