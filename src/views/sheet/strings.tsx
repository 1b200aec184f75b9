import type { JSX } from 'preact';
import type { SheetAnswer, SheetCheck } from '../../service/sheet/sheetAnswer';
import { figure, sentence } from '../shared/words';
import { Wide } from '../shared/wide';

/** Every string with its note, and how it is tuned and checked by ear. */
export function Strings({ sheet }: { readonly sheet: SheetAnswer }): JSX.Element {
  const { strings, tuneBy, octaves, harmonics } = sheet;
  const roles = strings.some(({ role }) => role !== null);
  return (
    <>
      <Wide name="Strings">
        <table>
          <caption class="unseen">Strings, the lowest-placed first</caption>
          <thead>
            <tr>
              <th scope="col">String</th>
              <th scope="col">Note</th>
              <th scope="col" class="number">
                Hertz
              </th>
              {roles && <th scope="col">In the chord</th>}
              <th scope="col">Tuned by</th>
            </tr>
          </thead>
          <tbody>
            {strings.map(({ number, note, pitches, role }) => (
              <tr key={number}>
                <th scope="row">{number}</th>
                <td>{note}</td>
                <td class="number">{pitches.map(({ frequency }) => figure(frequency, 2)).join(' / ')}</td>
                {roles && <td>{role}</td>}
                <td>{tunedBy(tuneBy.find(({ string }) => string === number))}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      <Checks title="Octaves to check by" checks={octaves} />
      <Checks title="Harmonics to check by" checks={harmonics} />
    </>
  );
}

function Checks({
  title,
  checks,
}: {
  readonly title: string;
  readonly checks: readonly { readonly words: string }[];
}): JSX.Element | null {
  if (checks.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul>
        {checks.map(({ words }) => (
          <li key={words}>{sentence(words)}</li>
        ))}
      </ul>
    </>
  );
}

/** `string 6 fret 5`; `its fret 7 by string 5` where the string itself is stopped. */
function tunedBy(check: SheetCheck | undefined): string {
  if (!check) return '';
  const { by, fret, stops, apart } = check;
  const octaves = apart === 0 ? '' : apart > 0 ? ', an octave above it' : ', an octave below it';
  if (fret === 0) return `string ${by} open${octaves}`;
  return stops === 'by'
    ? `string ${by} fret ${fret}${octaves}`
    : `string ${by} open, at its own fret ${fret}`;
}
