import type { RowName } from '../../notation/rowNames';
import type { Check } from '../check';
import { blankOut } from './edits';

/** What a check of a row's marks needs beside its words. */
export interface MarkWords extends Pick<Check, 'code' | 'title' | 'examples'> {
  readonly row: RowName;
  readonly meaning: string;
  readonly mending: string;
  /** Whether a mark is one that the row can have. */
  readonly fits: RegExp;
  /** What a row of this kind is made of, as people say it. */
  readonly expected: string;
}

/** A check that every mark of a row is one that the row knows. */
export function markCheck({
  code,
  title,
  row,
  meaning,
  mending,
  fits,
  expected,
  examples,
}: MarkWords): Check {
  return {
    code,
    severity: 'warning',
    title,
    help: { group: 'Rows', meaning, mending },
    run: {
      system: (scene) =>
        scene.reading.rows
          .filter((reading) => reading.row === row)
          .flatMap(({ line, marks }) =>
            marks
              .filter(({ text }) => !fits.test(text))
              .map(({ text, start, end }) => ({
                line,
                start,
                end,
                message: `“${text}” does not belong into the row ${row}, where ${expected} stand. Write one of these, or use a row of text.`,
                mends: [{ title: `Take “${text}” out`, edits: blankOut(scene, line, start, end) }],
              })),
          ),
    },
    examples,
  };
}
