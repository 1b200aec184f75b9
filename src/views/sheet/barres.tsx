import type { JSX } from 'preact';
import type { SheetBarres } from '../../service/sheet/sheetAnswer';
import { capital, sentence } from '../shared/words';
import { Wide } from '../shared/wide';

export interface BarresProps {
  readonly barres: SheetBarres;
  /** Whether a key is written. */
  readonly keyed: boolean;
}

/** Which chord one straight finger or bar gives at each fret. */
export function Barres({ barres: { frets, words, remark }, keyed }: BarresProps): JSX.Element {
  const capo = frets.some(({ sounds }) => sounds !== null);
  return (
    <>
      <p class="quiet">{sentence(capital(words))}</p>
      <Wide name="Straight barres">
        <table>
          <caption class="unseen">The chord of a straight barre at each fret</caption>
          <thead>
            <tr>
              <th scope="col">Fret</th>
              <th scope="col">Chord</th>
              {capo && <th scope="col">Sounds</th>}
              <th scope="col">Degree</th>
              {keyed && <th scope="col">In the key</th>}
              <th scope="col">Notes</th>
            </tr>
          </thead>
          <tbody>
            {frets.map(({ fret, chord, sounds, degree, inKey, main, notes }) => (
              <tr key={fret} class={main ? 'main' : ''}>
                <th scope="row">{fret}</th>
                <td>{chord ?? 'no everyday chord'}</td>
                {capo && <td>{sounds}</td>}
                <td>{degree}</td>
                {keyed && <td>{inKey === null ? '' : inKey ? 'yes' : 'no'}</td>}
                <td>{notes.join(' ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      {remark !== '' && <p>{sentence(remark)}</p>}
    </>
  );
}
