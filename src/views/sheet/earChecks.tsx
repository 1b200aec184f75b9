import type { JSX } from 'preact';
import type { SheetAnswer, SheetCheck } from '../../service/sheet/sheetAnswer';
import { sentence } from '../shared/words';

/** Octaves and harmonics that tell whether the strings agree. */
export function EarChecks({ sheet }: { readonly sheet: SheetAnswer }): JSX.Element {
  return (
    <>
      <Checks title="Octaves" checks={eachPairOnce(sheet.octaves)} />
      <Checks title="Harmonics" checks={sheet.harmonics} />
    </>
  );
}

interface ChecksProps {
  readonly title: string;
  readonly checks: readonly { readonly words: string }[];
}

function Checks({ title, checks }: ChecksProps): JSX.Element | null {
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

/** Two open strings an octave apart are one check, from whichever of them it is told. */
function eachPairOnce(checks: readonly SheetCheck[]): readonly SheetCheck[] {
  return checks.filter(
    ({ string, by, fret }, at) =>
      fret !== 0 ||
      !checks.slice(0, at).some((one) => one.fret === 0 && one.string === by && one.by === string),
  );
}
