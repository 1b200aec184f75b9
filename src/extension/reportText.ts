import type { Report } from '../service/serviceApi';

/** A change that was made: what was asked for, and what became of the notes. */
export interface ChangeReport {
  /** `Convert to DADGAD, keeping the sound`. */
  readonly asked: string;
  readonly report: Report;
}

/**
 * The counts in one line; of a change that writes something new, which has no notes to account for, what it begins its
 * remarks with.
 *
 * @example countsText({ notesIn: 38, kept: 36, moved: 0, unplaced: [one, other], remarks: [] }) // '36 kept, 0 moved, 2 unplaced'
 */
export function countsText(report: Report): string {
  const [first] = report.remarks;
  if (report.notesIn === 0 && report.unplaced.length === 0 && first !== undefined)
    return /^[^,.:]*/.exec(first)?.[0] ?? first;
  return `${report.kept} kept, ${report.moved} moved, ${report.unplaced.length} unplaced`;
}

/** Whether a user should read it before going on: notes found no place, or someone could come to harm. */
export function isGrave({ unplaced, cautions = [] }: Report): boolean {
  return unplaced.length > 0 || cautions.length > 0;
}

/**
 * What a notification says: the counts, and the cautions in full, since no one has to open a report for them.
 *
 * @example noticeText('Converted to DADGAD', report) // 'Converted to DADGAD: 36 kept, 0 moved, 2 unplaced.'
 */
export function noticeText(what: string, report: Report): string {
  return [`${what}: ${countsText(report)}.`, ...(report.cautions ?? [])].join(' ');
}

/** The whole report as plain text: every note that found no place is named with its bar and the reason. */
export function reportText(file: string, { asked, report }: ChangeReport): string {
  const notes = report.notesIn === 1 ? '1 note' : `${report.notesIn} notes`;
  const isNew = report.notesIn === 0 && report.remarks.length > 0;
  const lines = [`${file}: ${asked}`, ...(isNew ? [] : [`${notes}: ${countsText(report)}`])];
  if (report.unplaced.length > 0) {
    lines.push('', 'Notes without a place');
    for (const { part, bar, name, reason } of report.unplaced)
      lines.push(...wrapped(`${part === undefined ? '' : `${part}, `}bar ${bar}: ${name}, ${reason}`));
  }
  if (report.remarks.length > 0) {
    lines.push('', 'Remarks');
    for (const remark of report.remarks) lines.push(...wrapped(remark));
  }
  return `${lines.join('\n')}\n`;
}

/** Readable beside the tab without scrolling. */
const WIDTH = 60;

/** An item of a list, its further lines indented. */
function wrapped(text: string): string[] {
  const lines: string[] = [];
  let line = '-';
  for (const word of text.split(' ')) {
    if (line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = ' ';
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}
