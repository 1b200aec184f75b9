import type { JSX } from 'preact';
import type { SheetSlide, SheetSlideChord, SheetSlidePlace } from '../../service/sheet/sheetAnswer';
import { listed, sentence, signed } from '../shared/words';
import { Wide } from '../shared/wide';

/** So many places of a chord are shown at first; the rest is folded away. */
const FIRST = 6;

/** Where a straight or slanted bar gives the chords wanted. */
export function Slide({ slide: { chords, words } }: { readonly slide: SheetSlide }): JSX.Element {
  return (
    <>
      <p>{sentence(words)}</p>
      {chords.map((chord) => (
        <Chord key={chord.chord} chord={chord} />
      ))}
    </>
  );
}

function Chord({
  chord: { chord, degree, places, words },
}: {
  readonly chord: SheetSlideChord;
}): JSX.Element {
  const more = places.length - FIRST;
  return (
    <>
      <h3>{degree === null ? chord : `${chord}, ${degree}`}</h3>
      <p>{sentence(words)}</p>
      {places.length > 0 && <Places chord={chord} places={places.slice(0, FIRST)} />}
      {more > 0 && (
        <details>
          <summary>{`${more} more ${more === 1 ? 'place' : 'places'} for ${chord}`}</summary>
          <Places chord={`${chord}, more places`} places={places.slice(FIRST)} />
        </details>
      )}
    </>
  );
}

interface PlacesProps {
  readonly chord: string;
  readonly places: readonly SheetSlidePlace[];
}

function Places({ chord, places }: PlacesProps): JSX.Element {
  return (
    <Wide name={`Places for ${chord}`}>
      <table>
        <caption class="unseen">{`Places for ${chord}`}</caption>
        <thead>
          <tr>
            <th scope="col">Strings</th>
            <th scope="col">Bar</th>
            <th scope="col">Notes</th>
            <th scope="col">Leaves out</th>
            <th scope="col">Thirds, cents from just</th>
          </tr>
        </thead>
        <tbody>
          {places.map((place) => (
            <tr key={place.words}>
              <th scope="row">{place.strings.map(({ number }) => number).join(' ')}</th>
              <td>{barOf(place)}</td>
              <td>{place.strings.map(({ note }) => note).join(' ')}</td>
              <td>{place.leavesOut.length === 0 ? 'nothing' : `the ${listed(place.leavesOut)}`}</td>
              <td>{place.thirds.map(({ kind, cents }) => `${kind} ${signed(cents, 1)}`).join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}

/** `straight at fret 5`; `slanted, frets 5 4 3` from the lowest-placed string on. */
function barOf({ fret, slant, strings }: SheetSlidePlace): string {
  if (slant === 0) return fret === 0 ? 'open strings' : `straight at fret ${fret}`;
  return `slanted, frets ${strings.map((string) => string.fret).join(' ')}`;
}
