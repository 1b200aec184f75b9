import type { Finger } from '../../playing/hand/handAnswer';

/** A string as it is drawn. */
export interface DrawnString {
  /** Player's number. */
  readonly string: number;
  /** Two thin lines. */
  readonly course: boolean;
  /** The fret at which it begins, counted as frets are written: 0, or 5 for a banjo's fifth string. */
  readonly start: number;
  /** What stands above it: `o` rings open, `x` does not sound, a harmonic's diamond. */
  readonly mark: 'open' | 'silent' | 'harmonic' | undefined;
  /** Where it is stopped, as written. */
  readonly fret: number | undefined;
  readonly finger: Finger | undefined;
}

/** Something straight across strings, by their numbers, `from` ≥ `to`. */
export interface Across {
  readonly fret: number;
  readonly from: number;
  readonly to: number;
}

export interface Drawing {
  /** The highest number, at the left, first. */
  readonly strings: readonly DrawnString[];
  readonly barres: readonly (Across & { readonly finger: Finger })[];
  /** A slide player's bar, which lies right over the fret wire. */
  readonly bar: Across | undefined;
  /** A partial capo. */
  readonly capo: Across | undefined;
  /** What the picture shows, for those who do not see it. */
  readonly title: string;
}

/*
 * Pictures in a hover know no theme. Dots carry white digits: 4.6 : 1, as text needs; dots and lines stand at 3 : 1 or
 * more against white and against the dark grounds of editors, as parts of pictures need (WCAG 2.2, 1.4.3 and 1.4.11);
 * the position is large bold text. One colour, since colour means nothing here.
 */
export const PICTURE_COLOURS = { dot: '#50799b', line: '#888', digit: '#fff' } as const;

const LEFT = 40;
const RIGHT = 12;
/** How far right of the picture's middle that of the neck stands: the position's number is on the left. */
export const NECK_SHIFT = (LEFT - RIGHT) / 2;
const TOP = 22;
const BOTTOM = 5;
/** Between strings. */
const STEP = 16;
const MOST_FRET_ROOM = 19;
/** A longer neck is drawn smaller. */
const MOST_HEIGHT = 209;
const LEAST_FRETS = 4;
/** Grips that reach no farther than this are drawn from the nut. */
const NEAR_NUT = 5;

/**
 * A grip as players draw it: the neck upright, string 1 at the right, the nut as a thick line or else the number of the
 * first fret, a dot with the number of its finger, a circle over an open string, a cross over one that does not sound.
 * A well-formed SVG document of its own with a title; no script, no link, no style sheet.
 */
export function gripPicture(drawing: Drawing): string {
  const { strings, barres, bar, capo, title } = drawing;
  const { first, last } = frets(drawing);
  const rows = last - first + 1;
  const room = Math.min(MOST_FRET_ROOM, Math.floor(MOST_HEIGHT / rows));
  const radius = Math.min(7.5, room / 2 - 1);
  const right = LEFT + STEP * (strings.length - 1);
  const bottom = TOP + rows * room;
  const x = (string: number): number => LEFT + STEP * (strings.length - string);
  const wire = (fret: number): number => TOP + (fret - first + 1) * room;
  const middle = (fret: number): number => wire(fret) - room / 2;
  const shown = (fret: number): boolean => fret >= first && fret <= last;

  // Beside a string that begins up the neck the fingerboard is narrower.
  const leftEnd = (fret: number): number =>
    x(strings.find(({ start }) => start <= fret)?.string ?? strings.length);

  let neck = '';
  for (const { string, course, start } of strings) {
    const top = start >= first ? Math.min(wire(start), bottom) : TOP;
    for (const at of course ? [x(string) - 2, x(string) + 2] : [x(string)]) neck += `M${at} ${top}V${bottom}`;
  }
  for (let fret = first; fret <= last; fret++) neck += `M${leftEnd(fret)} ${wire(fret)}H${right}`;
  let marks = '';
  for (const { string, mark } of strings) {
    const at = x(string);
    if (mark === 'open') marks += `M${at - 5} 9a5 5 0 1 0 10 0 5 5 0 1 0-10 0`;
    if (mark === 'silent') marks += `M${at - 4} 5l8 8m0-8l-8 8`;
    if (mark === 'harmonic') marks += `M${at} 3l5 6-5 6-5-6z`;
  }
  const acrossFrets = [
    ...(capo && shown(capo.fret) ? [{ ...capo, y: middle(capo.fret), width: 5 }] : []),
    ...(bar && shown(bar.fret) ? [{ ...bar, y: wire(bar.fret), width: 9 }] : []),
    ...barres.map((barre) => ({ ...barre, y: middle(barre.fret), width: radius * 2 })),
  ];
  const across = acrossFrets.map(
    ({ from, to, y, width }) =>
      `<path stroke='${PICTURE_COLOURS.dot}' stroke-width='${width}' stroke-linecap='round' d='M${x(from)} ${y}H${x(to)}'/>`,
  );
  let dots = '';
  let digits = '';
  for (const { string, fret, finger } of strings) {
    if (fret === undefined || bar?.fret === fret) continue;
    const barre = barres.find((one) => one.fret === fret && one.from >= string && one.to <= string);
    if (!barre || barre.finger !== finger)
      dots += `<circle cx='${x(string)}' cy='${middle(fret)}' r='${radius}'/>`;
    if (finger !== undefined && finger !== 0 && (!barre || barre.from === string || barre.finger !== finger))
      digits += `<text x='${x(string)}' y='${middle(fret) + 4}'>${finger}</text>`;
  }
  const { dot, line, digit } = PICTURE_COLOURS;
  const width = right + RIGHT;
  const height = bottom + BOTTOM;
  const top = leftEnd(first - 1);
  const nut = first === 1 ? `M${top - 1} ${TOP}H${right + 1}` : '';
  const position = `<text x='${LEFT - 12}' y='${TOP + room / 2 + 7}' fill='${line}' font-size='19' text-anchor='end'>${first}</text>`;
  return [
    `<svg xmlns='http://www.w3.org/2000/svg' role='img' width='${width}' height='${height}'>`,
    `<title>${escaped(title)}</title>`,
    `<g fill='none' stroke='${line}'><path d='${neck}'/>`,
    `<path stroke-width='2' d='${marks}'/>`,
    nut === '' ? `<path d='M${top} ${TOP}H${right}'/>` : `<path stroke-width='4' d='${nut}'/>`,
    `${across.join('')}</g>`,
    dots === '' ? '' : `<g fill='${dot}'>${dots}</g>`,
    `<g fill='${digit}' font-family='sans-serif' font-size='12' font-weight='700' text-anchor='middle'>`,
    `${digits}${first === 1 ? '' : position}</g></svg>`,
  ].join('');
}

/** The frets that are drawn, as written. */
function frets({ strings, bar, barres }: Drawing): { readonly first: number; readonly last: number } {
  const stopped = [
    ...strings.flatMap(({ fret }) => fret ?? []),
    ...barres.map(({ fret }) => fret),
    ...(bar ? [bar.fret] : []),
  ];
  const lowest = Math.min(...stopped);
  const highest = Math.max(...stopped);
  if (stopped.length === 0) return { first: 1, last: LEAST_FRETS };
  const first = highest <= NEAR_NUT ? 1 : lowest;
  return { first, last: Math.max(highest, first + LEAST_FRETS - 1) };
}

function escaped(text: string): string {
  return text.replace(/[&<>]/g, (sign) => (sign === '&' ? '&amp;' : sign === '<' ? '&lt;' : '&gt;'));
}
