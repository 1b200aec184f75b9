import type { JSX } from 'preact';
import type { NeckLabels } from '../messages/neckMessages';
import { Wide } from '../shared/wide';
import { lookOf, type Neck } from './words';

export interface TableProps {
  readonly neck: Neck;
  readonly labels: NeckLabels;
  readonly every: boolean;
}

/** The same as a table: a row for each string, a column for each fret. */
export function NeckTable({ neck, labels, every }: TableProps): JSX.Element {
  const { board } = neck;
  const cells = board.numbers.map((_, index) => board.first + index);
  return (
    <Wide name="The neck as a table">
      <table class="neck">
        <caption class="unseen">The neck as a table: {board.title}</caption>
        <thead>
          <tr>
            <th scope="col">String</th>
            {board.numbers.map((number) => (
              <th scope="col" key={number}>
                {number === 0 ? 'Open' : number}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {board.strings.map(({ number, note, places }) => (
            <tr key={number}>
              <th scope="row">
                {number} ({note})
              </th>
              {cells.map((cell) => {
                const place = places.find((one) => one.cell === cell);
                const look = place && lookOf(place, number, neck, labels, every);
                const looks = [look?.how, look?.same && 'same', place?.root && !every && 'root'];
                return (
                  <td key={cell}>
                    {look ? <span class={looks.filter(Boolean).join(' ')}>{look.label}</span> : null}
                    {look?.how ? (
                      <span class="unseen">, {look.how === 'rings' ? 'rings' : 'sounds'} here</span>
                    ) : null}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
