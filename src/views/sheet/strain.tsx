import type { JSX } from 'preact';
import type { SetPull, StrainChange, StringsAnswer, StringStrain } from '../../service/strings/stringsAnswer';
import { Cautions } from '../shared/cautions';
import { figure, sentence, signed } from '../shared/words';
import { Wide } from '../shared/wide';

export interface StrainProps {
  readonly strain: StringsAnswer | null;
  /** Why it cannot be told. */
  readonly problem: string;
}

/** How hard each string pulls, against the usual set first, and the whole set last. */
export function Strain({ strain, problem }: StrainProps): JSX.Element {
  if (!strain) return <p>{sentence(problem)}</p>;
  const { strings, total, against, told, remarks, cautions } = strain;
  const other = strings.some(({ suggestedGauge }) => suggestedGauge !== null);
  return (
    <>
      <Cautions cautions={cautions} />
      <Wide name="What the strings bear">
        <table>
          <caption class="quiet">{`Changes are counted from ${sentence(against)}`}</caption>
          <thead>
            <tr>
              <th scope="col">String</th>
              <th scope="col" class="number">
                Change
              </th>
              <th scope="col" class="number">
                Newtons
              </th>
              <th scope="col" class="number">
                Pounds
              </th>
              <th scope="col">Gauge</th>
              <th scope="col" class="number">
                Of least strength
              </th>
              {other && <th scope="col">For the usual tension</th>}
            </tr>
          </thead>
          <tbody>
            {strings.map((string) => (
              <tr key={`${string.number} ${string.course}`}>
                <th scope="row">{stringName(string)}</th>
                <td class="number">{changeText(string.change)}</td>
                <td class="number">{known(string.newtons)}</td>
                <td class="number">{known(string.pounds, 1)}</td>
                <td>{string.gauge ?? 'not known'}</td>
                <td class="number">{string.steel ? percent(string.steel.share) : ''}</td>
                {other && <td>{string.suggestedGauge}</td>}
              </tr>
            ))}
          </tbody>
          {total && <Total total={total} rest={other ? 3 : 2} />}
        </table>
      </Wide>
      {told.length + remarks.length > 0 && (
        <ul>
          {[...told, ...remarks].map((one) => (
            <li key={one}>{sentence(one)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

function Total({ total, rest }: { readonly total: SetPull; readonly rest: number }): JSX.Element {
  return (
    <tfoot>
      <tr>
        <th scope="row">All</th>
        <td class="number">{changeText(total.change)}</td>
        <td class="number">{known(total.newtons)}</td>
        <td class="number">{known(total.pounds, 1)}</td>
        <td colSpan={rest} />
      </tr>
    </tfoot>
  );
}

/** `3 G3`; the second string of a course has the same number. */
function stringName({ number, note }: StringStrain): string {
  return `${number} ${note}`;
}

function changeText(change: StrainChange | null): string {
  if (!change) return 'not known';
  const text = signed((change.ratio - 1) * 100);
  return text === '0' ? 'none' : `${text} %`;
}

function known(value: number | null, decimals = 0): string {
  return value === null ? 'not known' : figure(value, decimals);
}

function percent(share: number): string {
  return `${figure(share * 100)} %`;
}
