/**
 * How wide a text is set, in units of the letters' size. No font is at hand where a picture is made, so this errs to
 * the wide side: it goes by the widest of the plain fonts that systems bring (DejaVu Sans, whose widths are from memory;
 * a picture in a browser is looked at in the tests).
 */
export function textWidth(text: string, bold = false): number {
  let width = 0;
  for (const sign of text) width += signWidth(sign);
  return width * (bold ? BOLD : PLAIN);
}

/** Small letters are set a little wider than large ones on a screen, and bold ones wider still. */
const PLAIN = 1.04;
const BOLD = 1.16;

function signWidth(sign: string): number {
  if (" .,:;'’|!ijl·".includes(sign)) return 0.34;
  if ('()[]frt/-–'.includes(sign)) return 0.42;
  if ('mwMW%@'.includes(sign)) return 0.98;
  if (sign >= 'A' && sign <= 'Z') return 0.74;
  return 0.64;
}

/**
 * A text in lines that are no wider than a measure; a single word that is wider stands alone.
 * @param most in the unit of `size`
 * @param size of the letters
 */
export function wrapText(text: string, most: number, size: number, bold = false): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, bold) * size > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}
