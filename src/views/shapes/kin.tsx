import type { JSX } from 'preact';
import type { ShapeAnswer, ShapeKinAnswer } from '../../service/shapes/shapesAnswer';
import { SvgPicture } from '../shared/svgPicture';
import { capital, sentence } from '../shared/words';

/** A shape of the usual tuning beside the nearest one here, and what each string does. */
export function Kin({ kin }: { readonly kin: ShapeKinAnswer }): JSX.Element {
  const { chord, soundsAs, usual, here, usualTuning, tuning, moves, words, remarks } = kin;
  return (
    <>
      <p>{soundsAs === null ? chord : `${chord}, sounds ${soundsAs}`}</p>
      <div class="pair">
        <Side title={`In ${usualTuning}`} shape={usual} scale={1.25} />
        <Side title={`In ${tuning}`} shape={here} scale={1.25} />
        {moves.length > 0 && (
          <table>
            <caption class="unseen">What each string does</caption>
            <thead>
              <tr>
                <th scope="col">String</th>
                <th scope="col">Was</th>
                <th scope="col">Is</th>
                <th scope="col">What to do</th>
              </tr>
            </thead>
            <tbody>
              {moves.map(({ string, from, to, changed, words: move }) => (
                <tr key={string} class={changed ? 'main' : ''}>
                  <th scope="row">{string}</th>
                  <td>{fretText(from)}</td>
                  <td>{fretText(to)}</td>
                  <td>{move}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
      <Remarks words={moves.length > 0 ? '' : words} remarks={remarks} />
    </>
  );
}

export interface SideProps {
  readonly title: string;
  readonly shape: ShapeAnswer | null;
  readonly scale: number;
}

/** One shape under the tuning that it is for. */
export function Side({ title, shape, scale }: SideProps): JSX.Element {
  return (
    <figure>
      <figcaption>{title}</figcaption>
      {shape ? (
        <>
          <SvgPicture svg={shape.svg} scale={scale} alt={shape.alt} />
          <p class="fretted">{shape.text}</p>
        </>
      ) : (
        <p>No shape.</p>
      )}
    </figure>
  );
}

export function Remarks({
  words,
  remarks,
}: {
  readonly words: string;
  readonly remarks: readonly string[];
}): JSX.Element {
  return (
    <>
      {[words, ...remarks]
        .filter((one) => one !== '')
        .map((one) => (
          <p key={one}>{sentence(capital(one))}</p>
        ))}
    </>
  );
}

/** As frets are written: a number, `x` for a string that is not played, nothing for one that is not there. */
function fretText(fret: number | null | undefined): string {
  return fret === undefined ? '' : fret === null ? 'x' : String(fret);
}
