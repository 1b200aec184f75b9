import type { JSX } from 'preact';
import type { SheetScale } from '../../service/sheet/sheetAnswer';
import { stringsListed } from '../shared/words';
import { Wide } from '../shared/wide';

export interface ScaleProps {
  readonly scale: SheetScale | null;
  readonly onCopy: (text: string, what: string) => void;
}

/** The frets of the key's scale, once for all strings that share them. */
export function Scale({ scale, onCopy }: ScaleProps): JSX.Element {
  if (!scale) return <p>Write the key, such as “key: D major”, and the frets of its scale stand here.</p>;
  return (
    <>
      <p class="quiet">{`${scale.name}: ${scale.notes.join(' ')}`}</p>
      <Wide name="Frets of the scale">
        <table>
          <caption class="unseen">{`Frets of ${scale.name} by string`}</caption>
          <thead>
            <tr>
              <th scope="col">On</th>
              <th scope="col">Frets</th>
            </tr>
          </thead>
          <tbody>
            {scale.sets.map(({ strings, frets, names }) => (
              <tr key={strings.join(' ')}>
                <th scope="row">{`${stringsListed(strings)} (${names.join(', ')})`}</th>
                <td class="frets">{frets.length === 0 ? 'none' : frets.join(' ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Wide>
      <div class="buttons">
        <button type="button" onClick={() => onCopy(scale.words, 'The frets of the scale are')}>
          Copy Frets
        </button>
      </div>
    </>
  );
}
