import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { NeckLabels } from '../messages/neckMessages';
import type { Marks, Remembered } from './remembered';

export interface ControlsProps {
  readonly choices: Remembered;
  /** Why the scale or chord is not marked; empty when it is. */
  readonly problem: string;
  readonly onChange: (changed: Partial<Remembered>) => void;
}

const LABELS: readonly (readonly [NeckLabels, string])[] = [
  ['notes', 'Notes'],
  ['degrees', 'Degrees'],
  ['intervals', 'Intervals'],
];
const MARKS: readonly (readonly [Marks, string])[] = [
  ['key', 'The key'],
  ['scale', 'A scale'],
  ['chord', 'A chord'],
  ['every', 'Nothing'],
];
const FRETS: readonly (readonly [string, string])[] = [
  ['5', '5'],
  ['7', '7'],
  ['12', '12'],
  ['15', '15'],
  ['0', 'All'],
];

/** What the neck shows. */
export function Controls({ choices, problem, onChange }: ControlsProps): JSX.Element {
  const { labels, marks, frets } = choices;
  return (
    <div class="controls">
      <Choice
        label="Show"
        value={labels}
        options={LABELS}
        onChoose={(value) => onChange({ labels: value })}
      />
      <Choice label="Mark" value={marks} options={MARKS} onChoose={(value) => onChange({ marks: value })} />
      <Choice
        label="Frets"
        value={String(frets)}
        options={FRETS}
        onChoose={(value) => onChange({ frets: Number(value) })}
      />
      {marks === 'scale' ? (
        <Named
          key="scale"
          label="Scale"
          example="D dorian"
          value={choices.scale}
          problem={problem}
          onName={(scale) => onChange({ scale })}
        />
      ) : null}
      {marks === 'chord' ? (
        <Named
          key="chord"
          label="Chord"
          example="G/B"
          value={choices.chord}
          problem={problem}
          onName={(chord) => onChange({ chord })}
        />
      ) : null}
    </div>
  );
}

interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly (readonly [Value, string])[];
  readonly onChoose: (value: Value) => void;
}

function Choice<Value extends string>({ label, value, options, onChoose }: ChoiceProps<Value>): JSX.Element {
  return (
    <Field label={label}>
      <select
        value={value}
        onChange={({ currentTarget }) => {
          const chosen = options.find(([one]) => one === currentTarget.value)?.[0];
          if (chosen !== undefined) onChoose(chosen);
        }}
      >
        {options.map(([one, title]) => (
          <option key={one} value={one}>
            {title}
          </option>
        ))}
      </select>
    </Field>
  );
}

interface NamedProps {
  readonly label: string;
  readonly example: string;
  readonly value: string;
  readonly problem: string;
  readonly onName: (name: string) => void;
}

/** Typing rests this long, in milliseconds, before the neck follows it. */
const REST = 250;

/** A name to type; the service says beside it what it cannot read. */
function Named({ label, example, value, problem, onName }: NamedProps): JSX.Element {
  const [typed, setTyped] = useState(value);
  useEffect(() => {
    if (typed === value) return undefined;
    const waiting = setTimeout(() => onName(typed), REST);
    return () => clearTimeout(waiting);
  }, [typed]);
  return (
    <>
      <Field label={label}>
        <input
          type="text"
          value={typed}
          placeholder={example}
          spellcheck={false}
          autocomplete="off"
          aria-invalid={problem !== ''}
          aria-describedby="problem"
          onInput={({ currentTarget }) => setTyped(currentTarget.value)}
          onKeyDown={({ key }) => key === 'Enter' && onName(typed)}
        />
      </Field>
      <p id="problem" class="mistake" aria-live="polite">
        {problem}
      </p>
    </>
  );
}

function Field({
  label,
  children,
}: {
  readonly label: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <label class="field">
      <span>{label}</span>
      {children}
    </label>
  );
}
