import { createElement, type JSX } from 'preact';
import { useMemo } from 'preact/hooks';

/** What a picture of ours consists of; anything else is left out, so that no picture can do anything. */
const ELEMENTS = new Set(['svg', 'title', 'desc', 'g', 'path', 'circle', 'rect', 'line', 'text', 'tspan']);
const ATTRIBUTES = new Set([
  ...['width', 'height', 'viewBox', 'd', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'cx', 'cy', 'r', 'rx', 'dx', 'dy'],
  ...['fill', 'stroke', 'stroke-width', 'stroke-linecap', 'stroke-dasharray', 'opacity', 'transform'],
  ...['font-size', 'font-weight', 'text-anchor', 'dominant-baseline'],
]);

export interface SvgPictureProps {
  /** An SVG document of the service. */
  readonly svg: string;
  /** How much larger than it is drawn; 1 where nothing is said. */
  readonly scale?: number;
  /** What it shows, for those who do not see it; left out where the words stand beside it. */
  readonly alt?: string;
}

/**
 * A picture of the service, drawn into the page so that it takes the theme's colours (the style sheet gives them to
 * the colours of `PICTURE_COLOURS`). It is built anew from known elements and attributes; nothing is inserted as text.
 */
export function SvgPicture({ svg, scale = 1, alt }: SvgPictureProps): JSX.Element | null {
  const root = useMemo(() => new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement, [svg]);
  if (root.localName !== 'svg') return null;
  const width = Number(root.getAttribute('width'));
  const height = Number(root.getAttribute('height'));
  const size = { width: width * scale, height: height * scale, viewBox: `0 0 ${width} ${height}` };
  const named = alt === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': alt };
  return createElement('svg', { ...size, ...named, class: 'picture' }, ...children(root));
}

function children(of: Element): (JSX.Element | string)[] {
  return [...of.childNodes].flatMap((node) => {
    if (node instanceof Text) return node.data;
    // The title would come up as a tip over every part of the picture; its words stand beside it.
    if (!(node instanceof Element) || !ELEMENTS.has(node.localName) || node.localName === 'title') return [];
    const kept = [...node.attributes].filter(({ name }) => ATTRIBUTES.has(name));
    const attributes = Object.fromEntries(kept.map(({ name, value }) => [name, value]));
    return createElement(node.localName, attributes, ...children(node));
  });
}
