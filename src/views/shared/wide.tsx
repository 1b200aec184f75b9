import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

export interface WideProps {
  /** Names it where it has to be scrolled. */
  readonly name: string;
  readonly children: ComponentChildren;
}

/**
 * Holds what may be wider than the page, such as a table. Only where it really is wider it can be reached by Tab and
 * scrolled by the arrow keys; elsewhere it is no stop on the way.
 */
export function Wide({ name, children }: WideProps): JSX.Element {
  const box = useRef<HTMLDivElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useEffect(() => {
    const { current } = box;
    if (!current) return undefined;
    const look = (): void => setScrolls(current.scrollWidth > current.clientWidth);
    const sizes = new ResizeObserver(look);
    sizes.observe(current);
    if (current.firstElementChild) sizes.observe(current.firstElementChild);
    return () => sizes.disconnect();
  }, []);
  const stop = scrolls ? { tabIndex: 0, role: 'region' as const, 'aria-label': name } : {};
  return (
    <div class="wide" ref={box} {...stop}>
      {children}
    </div>
  );
}
