import type { JSX } from 'preact';
import type { StrainChange, StringsAnswer, StringStrain } from '../../service/strings/stringsAnswer';
import { Cautions } from '../shared/cautions';
import { figure, sentence, signed } from '../shared/words';
import { Wide } from '../shared/wide';

export interface StrainProps {
  readonly strain: StringsAnswer | null;
  /** Why it cannot be told. */
  readonly problem: string;
  /** Cautions that stand on the page already. */
  readonly told: readonly string[];
}

/** A column of the table; it is left out where no string has anything in it. */
interface Column {
  readonly title: string;
  readonly number: boolean;
  readonly of: (string: StringStrain) => string | null;
  readonly ofAll: (total: NonNullable<StringsAnswer['total']>) => string;
}

const COLUMNS: readonly Column[] = [
  {
    title: 'Change',
    number: true,
    of: ({ change }) => changeText(change),
    ofAll: ({ change }) => changeText(change) ?? '',
  },
  {
    title: 'Newtons',
    number: true,
    of: ({ newtons }) => known(newtons),
    ofAll: ({ newtons }) => figure(newtons),
  },
  {
    title: 'Pounds',
    number: true,
    of: ({ pounds }) => known(pounds, 1),
    ofAll: ({ pounds }) => figure(pounds, 1),
  },
  { title: 'Gauge', number: false, of: ({ gauge }) => gauge, ofAll: () => '' },
  {
    title: 'Of least strength',
    number: true,
    of: ({ steel }) => steel && `${figure(steel.share * 100)} %`,
    ofAll: () => '',
  },
  {
    title: 'For the usual tension',
    number: false,
    of: ({ suggestedGauge }) => suggestedGauge,
    ofAll: () => '',
  },
];

/** How hard each string pulls, against the usual set first, and the whole set last. */
export function Strain({ strain, problem, told: before }: StrainProps): JSX.Element {
  if (!strain) return <p>{sentence(problem)}</p>;
  const { strings, total, against, told, remarks, cautions } = strain;
  const columns = COLUMNS.filter(({ of }) => strings.some((string) => of(string) !== null));
  const classOf = ({ number }: Column): string => (number ? 'number' : '');
  return (
    <>
      <Cautions cautions={cautions.filter((caution) => !before.includes(caution))} />
      <p class="quiet">{`Changes are counted from ${sentence(against)}`}</p>
      <Wide name="What the strings bear">
        <table>
          <caption class="unseen">Tension of each string and of the whole set</caption>
          <thead>
            <tr>
              <th scope="col">String</th>
              {columns.map((column) => (
                <th key={column.title} scope="col" class={classOf(column)}>
                  {column.title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {strings.map((string) => (
              <tr key={`${string.number} ${string.course}`}>
                <th scope="row">{`${string.number} ${string.note}`}</th>
                {columns.map((column) => (
                  <td key={column.title} class={classOf(column)}>
                    {column.of(string)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
          {total && (
            <tfoot>
              <tr>
                <th scope="row">All</th>
                {columns.map((column) => (
                  <td key={column.title} class={classOf(column)}>
                    {column.ofAll(total)}
                  </td>
                ))}
              </tr>
            </tfoot>
          )}
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

function changeText(change: StrainChange | null): string | null {
  if (!change) return null;
  const text = signed((change.ratio - 1) * 100);
  return text === '0' ? 'none' : `${text} %`;
}

function known(value: number | null, decimals = 0): string | null {
  return value === null ? null : figure(value, decimals);
}
