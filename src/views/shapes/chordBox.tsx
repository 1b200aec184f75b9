import type { JSX, RefObject } from 'preact';

export interface ChordBoxProps {
  readonly box: RefObject<HTMLInputElement>;
  readonly tab: 'shapes' | 'kin';
  readonly chord: string;
  /** What is wrong with it, in words; empty when nothing is. */
  readonly problem: string;
  readonly onInput: (text: string) => void;
  readonly onEnter: () => void;
}

const WORDS = {
  shapes: { label: 'Chord', placeholder: 'G/B, Dsus4' },
  kin: { label: 'Chord, or frets in the usual tuning', placeholder: 'G/B, or x 3 2 0 1 0' },
} as const;

/** Where the chord is typed. What is wrong with it stands beside it and is read out with it. */
export function ChordBox({ box, tab, chord, problem, onInput, onEnter }: ChordBoxProps): JSX.Element {
  const { label, placeholder } = WORDS[tab];
  return (
    <form
      class="chord"
      onSubmit={(event) => {
        event.preventDefault();
        onEnter();
      }}
    >
      <label for="chord">{label}</label>
      <input
        id="chord"
        type="text"
        ref={box}
        value={chord}
        placeholder={placeholder}
        spellcheck={false}
        autocomplete="off"
        aria-invalid={problem !== ''}
        aria-describedby="chord-problem"
        onInput={({ currentTarget }) => onInput(currentTarget.value)}
      />
      <p id="chord-problem" class="mistake" role="status">
        {problem}
      </p>
    </form>
  );
}
