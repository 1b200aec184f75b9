import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { RetuningProps } from './retuning';

/** Stands for a tuning that is typed; no tuning is called so. */
const TYPED = '#typed';

/** The tuning to come from: one on offer, or typed. */
export function FromTuning({ retuning, choices, from, problem, onFrom }: RetuningProps): JSX.Element {
  const offered = from === '' || choices.some(({ value }) => value === from);
  const [typing, setTyping] = useState(!offered);
  const [text, setText] = useState(offered ? '' : from);
  useEffect(() => setTyping((before) => before || !offered), [offered]);
  const chosen = typing ? TYPED : from;
  const choose = (value: string): void => {
    setTyping(value === TYPED);
    if (value !== TYPED) onFrom(value);
  };
  return (
    <form
      class="from"
      onSubmit={(event) => {
        event.preventDefault();
        if (typing && text.trim() !== '') onFrom(text.trim());
      }}
    >
      <label for="from">Retune from</label>
      <select id="from" value={chosen} onChange={({ currentTarget }) => choose(currentTarget.value)}>
        <option value="">{usualWords(retuning)}</option>
        {choices.map(({ value, notes }) => (
          <option key={value} value={value}>
            {value === notes ? value : `${value} (${notes})`}
          </option>
        ))}
        <option value={TYPED}>another tuning…</option>
      </select>
      {typing && (
        <>
          <label for="typed" class="unseen">
            Tuning to retune from, by name or notes, low string first
          </label>
          <input
            id="typed"
            type="text"
            value={text}
            placeholder="E B E G# B E"
            spellcheck={false}
            autocomplete="off"
            aria-invalid={problem !== ''}
            aria-describedby="from-problem"
            onInput={({ currentTarget }) => setText(currentTarget.value)}
          />
          <button type="submit">Show</button>
        </>
      )}
      <p id="from-problem" class="mistake" role="status">
        {problem}
      </p>
    </form>
  );
}

/** What is taken where nothing is chosen. */
function usualWords({ from: { why, name, notes } }: RetuningProps['retuning']): string {
  if (why === 'asked') return 'the usual or earlier tuning';
  return `${why === 'earlier' ? 'the earlier tuning' : 'the usual tuning'}, ${name ?? notes}`;
}
