/** A line that may be a string of tab; whether it is one shows in its company. */
export interface StringCandidate {
  /** Line of the text, from 0. */
  readonly line: number;
  /** As written; empty without one. */
  readonly label: string;
  /** Column of the line at which the run begins: that of its first bar sign, or the one before its first dash. */
  readonly origin: number;
  /** From the first bar sign on, which is there even where none was written. */
  readonly run: string;
  /** What stands behind the run. */
  readonly remark: string;
  /** Whether bar lines were written with another sign. */
  readonly otherBars: boolean;
  /** Whether strings are drawn with spaces. */
  readonly spaced: boolean;
  /** The frets stand, with the label as a fret in front: for lines whose labels turn out to be none. */
  readonly unlabelled: { readonly origin: number; readonly run: string };
}

const NOTE = '[A-Ga-g](?:#|b|♯|♭)?\\d?';
const LABEL = `(?:${NOTE}(?:/${NOTE})?|1[0-4]|[1-9])`;
const HEAD = new RegExp(`^( *)(${LABEL})?( *)(?:[|‖]|:(?=[-—_:|(<\\dxX])|(?=[-—_]))`);
/** A capital I, an exclamation mark or a colon for every bar line. */
const OTHER_BARS = new RegExp(`^ *(?:${LABEL})? *([I!:])[-—_ ].*\\1\\s*$`);
/** What a string line may hold besides digits, dashes and bar signs. */
const SIGNS = /[hpbrtsvxo~/\\^<>()[\]{}*.:=_\u2016½¼¾]/iu;

/**
 * The line as a string of tab; undefined for one that is none. Reads in one pass, however long the line is.
 * @param beside whether a string stands right beside it: then letters and signs that are none of tab are let pass in a
 *   line with a label that is mostly dashes
 */
export function stringCandidate(columns: string, line: number, beside = false): StringCandidate | undefined {
  const otherBars = !columns.includes('|') && OTHER_BARS.test(columns);
  const text = otherBars ? columns.replace(/[I!:]/g, '|') : columns;
  const head = HEAD.exec(text);
  if (!head) return undefined;
  const [all, indent = '', label = '', gap = ''] = head;
  // A letter that begins a word, or a list with a dash.
  if (label !== '' && gap !== '' && !/[|‖:]$/.test(all) && !/^[-—_][-—_\d]/.test(text.slice(all.length)))
    return undefined;
  const signed = /[|‖:]$/.test(all);
  const rest = text.slice(all.length);
  const { body, remark } = withoutRemark(rest);
  const framed = label !== '' && signed;
  const drawn = drawing(body, framed) ?? (beside && framed && mostlyDashes(body) ? 'dashes' : undefined);
  if (drawn === undefined) return undefined;
  const bodyAt = all.length;
  const first = text[bodyAt - 1] === '‖' ? '‖' : '|';
  return {
    line,
    label,
    origin: bodyAt - 1,
    run: first + body,
    remark: remark.trim() === label ? '' : remark.trim(),
    otherBars,
    spaced: drawn === 'spaces',
    unlabelled: { origin: indent.length - 1, run: `|${text.slice(indent.length, bodyAt)}${body}` },
  };
}

/** Parts a run from the words behind it. */
function withoutRemark(rest: string): { readonly body: string; readonly remark: string } {
  const bar = Math.max(rest.lastIndexOf('|'), rest.lastIndexOf('‖'));
  const tail = rest.slice(bar + 1);
  if (bar >= 0 && (!/[-—_]/.test(tail) || (tail.startsWith(' ') && foreign(tail))))
    return { body: rest.slice(0, bar + 1), remark: tail };
  for (const found of tail.matchAll(/\S+/g)) {
    if (found.index > 0 && /^(?:\(?[a-z]{2,}|\(?x\d|\d+x|<-|#)/i.test(found[0]) && !/--/.test(found[0]))
      return { body: rest.slice(0, bar + 1 + found.index).trimEnd(), remark: tail.slice(found.index) };
  }
  return { body: rest.trimEnd(), remark: '' };
}

function foreign(text: string): boolean {
  return /[^-—_\d\sxXhHpPbBrRtTsSvV~/\\^().|]/.test(text) || hasWord(text);
}

/** Three letters in a row that are no run of signs. */
function hasWord(text: string): boolean {
  for (const [letters] of text.matchAll(/\p{L}{3,}/gu)) {
    if (!/^(?:p?bfull|full|[xo]+|v+|w+)$/i.test(letters)) return true;
  }
  return false;
}

function mostlyDashes(body: string): boolean {
  return body.length >= 6 && (body.match(/[-—_]/g)?.length ?? 0) * 2 >= body.length;
}

/** How the string is drawn; undefined where the text is no string. */
function drawing(run: string, framed: boolean): 'dashes' | 'spaces' | undefined {
  const body = run.replace(/full|sl/gi, (word) => 's'.repeat(word.length));
  let dashes = 0;
  let spaces = 0;
  let unknown = 0;
  let alternate = true;
  for (let i = 0; i < body.length; i++) {
    const sign = body.charAt(i);
    if (sign === '-' || sign === '—' || sign === '_') dashes += 1;
    else if (sign === ' ') spaces += 1;
    else if (!/[\d|]/.test(sign) && !SIGNS.test(sign)) unknown += 1;
    if (sign === ' ' && body[i + 1] === ' ') alternate = false;
  }
  if (unknown * 10 > dashes || hasWord(run)) return undefined;
  if (dashes === 0) {
    const closed =
      framed && /[|‖]$/.test(body) && (spaces === 0 || (body.length >= 5 && spaces * 2 > body.length));
    return closed && !/[a-z]{2}/i.test(body) && !/\b0\d/.test(body) ? 'spaces' : undefined;
  }
  // Between a label and bar lines one is enough; elsewhere a dash or two are prose.
  if (dashes < (framed && spaces === 0 && /[|‖]$/.test(body) ? 1 : 3)) return undefined;
  if (spaces > dashes && !(alternate && spaces <= body.length / 2 + 2 && !/\d[-—]\d/.test(body)))
    return undefined;
  return 'dashes';
}
