import type { ComponentChildren, JSX } from 'preact';
import { useRef } from 'preact/hooks';

export interface TabsProps<Name extends string> {
  /** Names all of them together. */
  readonly label: string;
  readonly tabs: readonly { readonly name: Name; readonly title: string }[];
  readonly chosen: Name;
  readonly onChoose: (name: Name) => void;
  /** What the chosen one shows. */
  readonly children: ComponentChildren;
}

/** Several looks at one thing: Tab reaches the chosen one, arrow keys go to the others, as ARIA has it. */
export function Tabs<Name extends string>(props: TabsProps<Name>): JSX.Element {
  const { label, tabs, chosen, onChoose, children } = props;
  const list = useRef<HTMLDivElement>(null);
  const move = (event: KeyboardEvent): void => {
    const at = tabs.findIndex(({ name }) => name === chosen);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    const next = to === undefined ? undefined : tabs[(to + tabs.length) % tabs.length];
    if (!next) return;
    event.preventDefault();
    onChoose(next.name);
    list.current?.querySelector<HTMLElement>(`#tab-${next.name}`)?.focus();
  };
  return (
    <>
      <div class="tabs" role="tablist" aria-label={label} ref={list} onKeyDown={move}>
        {tabs.map(({ name, title }) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`tab-${name}`}
            aria-selected={name === chosen}
            aria-controls="tab-panel"
            tabIndex={name === chosen ? 0 : -1}
            onClick={() => onChoose(name)}
          >
            {title}
          </button>
        ))}
      </div>
      <div id="tab-panel" role="tabpanel" aria-labelledby={`tab-${chosen}`}>
        {children}
      </div>
    </>
  );
}
