import type { JSX } from 'preact';
import type { SheetAnswer, SheetCheck } from '../../service/sheet/sheetAnswer';
import { figure } from '../shared/words';
import { Wide } from '../shared/wide';

/** Every string with its note, and by which other string it is tuned. */
export function Strings({ sheet }: { readonly sheet: SheetAnswer }): JSX.Element {
  const { strings, tuneBy } = sheet;
  const roles = strings.some(({ role }) => role !== null);
  return (
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
