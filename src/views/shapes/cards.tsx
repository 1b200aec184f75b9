import type { JSX } from 'preact';
import type { ShapeAnswer, ShapesAnswer } from '../../service/shapes/shapesAnswer';
import { SvgPicture } from '../shared/svgPicture';
import { sentence } from '../shared/words';

export type CardAct = 'insert' | 'copy' | 'picture';

export interface CardsProps {
  readonly answer: ShapesAnswer;
  /** Whether it answers an earlier question, so that it can be looked at but not used. */
  readonly stale: boolean;
  /** `text` of the chosen shape. */
  readonly chosen: string;
  readonly onChoose: (shape: string) => void;
  readonly onDo: (act: CardAct) => void;
}

/** The shapes of a chord as cards: arrow keys choose one, Enter or a double click writes it into the tab. */
export function Cards({ answer, stale, chosen, onChoose, onDo }: CardsProps): JSX.Element {
  const { shapes, remarks } = answer;
  const shape = shapes.find(({ text }) => text === chosen);
  return (
    <>
      <p>{headline(answer)}</p>
      {remarks.map((remark) => (
        <p key={remark} class="quiet">
          {sentence(remark)}
        </p>
      ))}
      {shapes.length > 0 && (
        <form
          class="shapes"
          onSubmit={(event) => {
            event.preventDefault();
            if (shape && !stale) onDo('insert');
          }}
        >
          <div class="chosen">
            <p>{shape ? sentence(shape.words) : 'Choose a shape.'}</p>
            <div class="buttons">
              <button type="submit" class="main" disabled={!shape || stale}>
                Insert at Cursor
              </button>
              <button type="button" disabled={!shape || stale} onClick={() => onDo('copy')}>
                Copy as Tab
              </button>
              <button type="button" disabled={!shape || stale} onClick={() => onDo('picture')}>
                Save Picture…
              </button>
            </div>
          </div>
          <fieldset class="cards">
            <legend class="unseen">{`Shapes of ${answer.chord}`}</legend>
            {shapes.map((one) => (
              <Card
                key={one.text}
                shape={one}
                chosen={one.text === chosen}
                onChoose={() => onChoose(one.text)}
                onTake={() => {
                  onChoose(one.text);
                  if (!stale) onDo('insert');
                }}
              />
            ))}
          </fieldset>
        </form>
      )}
    </>
  );
}

interface CardProps {
  readonly shape: ShapeAnswer;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  readonly onTake: () => void;
}

function Card({ shape, chosen, onChoose, onTake }: CardProps): JSX.Element {
  return (
    <label class={chosen ? 'card chosen' : 'card'} onDblClick={onTake}>
      <input
        type="radio"
        name="shape"
        class="unseen"
        value={shape.text}
        checked={chosen}
        onChange={onChoose}
      />
      <SvgPicture svg={shape.svg} scale={1.25} />
      <span class="fretted">{shape.text}</span>
      <span class="short">{shape.short}</span>
    </label>
  );
}

/** `D/F# (D A F#) in DADGAD (D2 A2 D3 G3 A3 D4), capo at fret 2`; the remarks say what it then sounds as. */
function headline({ chord, tones, tuning, capo }: ShapesAnswer): string {
  const where = capo === null ? tuning : `${tuning}, ${capo}`;
  return `${chord} (${tones.join(' ')}) in ${where}.`;
}
