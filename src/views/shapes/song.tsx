import type { JSX } from 'preact';
import type { SongChord, SongShapesAnswer } from '../../service/shapes/shapesAnswer';
import { listed, sentence } from '../shared/words';
import { Remarks, Side } from './kin';

export interface SongProps {
  readonly song: SongShapesAnswer;
  readonly onGo: (line: number, column: number) => void;
}

/** Every chord of the piece: its everyday shape, the nearest here, and what the strings do. */
export function Song({ song: { chords, remarks, from }, onGo }: SongProps): JSX.Element {
  return (
    <>
      <Remarks words="" remarks={remarks} />
      {from === 'tab' && chords.length > 0 && (
        <p class="quiet">No names are written over the tab: these are the chords that are struck in it.</p>
      )}
      <ul class="song">
        {chords.map((chord) => (
          <li key={`${chord.line} ${chord.column} ${chord.chord}`}>
            <Chord chord={chord} onGo={() => onGo(chord.line, chord.column)} />
          </li>
        ))}
      </ul>
    </>
  );
}

function Chord({ chord, onGo }: { readonly chord: SongChord; readonly onGo: () => void }): JSX.Element {
  const { kin, problem, part, bars } = chord;
  const where = `${bars.length === 1 ? 'bar' : 'bars'} ${listed(bars)}`;
  return (
    <>
      <h2>{kin?.soundsAs ? `${chord.chord}, sounds ${kin.soundsAs}` : chord.chord}</h2>
      <button type="button" class="place" onClick={onGo}>
        {part === null ? where : `${part}, ${where}`}
        <span class="unseen">{` of ${chord.chord}: go there`}</span>
      </button>
      {kin ? (
        <>
          <div class="pair">
            <Side title={shortTuning(kin.usualTuning)} shape={kin.usual} scale={1} />
            <Side title={shortTuning(kin.tuning)} shape={kin.here} scale={1} />
          </div>
          <Remarks words={kin.words} remarks={kin.remarks} />
        </>
      ) : (
        <p class="mistake">{sentence(problem ?? '')}</p>
      )}
    </>
  );
}

/** `standard (E2 A2 D3 G3 B3 E4)` without the notes, which stand nowhere new here. */
function shortTuning(tuning: string): string {
  return tuning.replace(/ \([^)]*\)$/, '');
}
