import type { JSX } from 'preact';
import type { SheetAnswer } from '../../service/sheet/sheetAnswer';
import { Status } from '../shared/status';
import { capital, sentence } from '../shared/words';

export interface HeadProps {
  readonly sheet: SheetAnswer;
  /** What was just done. */
  readonly done: string;
  readonly onHandout: (as: 'svg' | 'copy') => void;
}

/** What tuning it is, what it makes, and the handout of it. */
export function Head({ sheet: { tuning, open }, done, onHandout }: HeadProps): JSX.Element {
  return (
    <header>
      <h1>{capital(tuning.title)}</h1>
      <p class="notes">{tuning.notes}</p>
      <p>{sentence(open.words)}</p>
      {tuning.facts.length > 0 && (
        <ul class="facts quiet">
          {tuning.facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
      )}
      <div class="buttons">
        <button type="button" onClick={() => onHandout('svg')}>
          Save Handout as SVG…
        </button>
        <button type="button" onClick={() => onHandout('copy')}>
          Copy Handout as Text
        </button>
        <Status words={done} />
      </div>
    </header>
  );
}
