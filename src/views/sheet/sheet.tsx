import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { FromSheet, ToSheet } from '../messages/sheetMessages';
import type { ExtensionLink } from '../shared/extensionLink';
import { Section } from '../shared/section';
import { Barres } from './barres';
import { EarChecks } from './earChecks';
import { Head } from './head';
import { AT_FIRST, type Remembered } from './remembered';
import { Retuning } from './retuning';
import { Scale } from './scale';
import { Slide } from './slide';
import { Strain } from './strain';
import { Strings } from './strings';

export interface SheetProps {
  readonly link: ExtensionLink<ToSheet, FromSheet, Remembered>;
}

type Shown = Extract<ToSheet, { kind: 'sheet' }>;

/** The tuning sheet: follows what the extension sends, and stays where the reader is on the page. */
export function Sheet({ link }: SheetProps): JSX.Element {
  const [kept, setKept] = useState(() => link.remembered() ?? AT_FIRST);
  const [shown, setShown] = useState<Shown>();
  const [nothing, setNothing] = useState('');
  const [done, setDone] = useState('');
  const latest = useRef(kept);
  const keep = (change: Partial<Remembered>): void => {
    latest.current = { ...latest.current, ...change };
    link.remember(latest.current);
    setKept(latest.current);
  };

  useEffect(() => {
    link.listen((message) => {
      if (message.kind === 'sheet') {
        setShown(message);
        setNothing('');
      } else if (message.kind === 'nothing') setNothing(message.words);
      else setDone(message.words);
    });
    link.send({ kind: 'ready', from: latest.current.from });
    const scrolled = (): void => {
      latest.current = { ...latest.current, scroll: Math.round(window.scrollY) };
      link.remember(latest.current);
    };
    window.addEventListener('scroll', scrolled, { passive: true });
    return () => window.removeEventListener('scroll', scrolled);
  }, []);

  // The page is empty at first; it goes back to its place when there is something to see.
  const there = shown !== undefined;
  useLayoutEffect(() => {
    if (there) window.scrollTo(0, latest.current.scroll);
  }, [there]);

  // What was done is no longer news when something else is looked at.
  useEffect(() => {
    const timer = setTimeout(() => setDone(''), 5000);
    return () => clearTimeout(timer);
  }, [done]);

  if (nothing !== '' || !shown)
    return (
      <>
        <h1 class={nothing === '' ? 'unseen' : ''}>Tuning sheet</h1>
        <p>{nothing}</p>
      </>
    );
  const { sheet, strain, strainProblem, choices, fromProblem } = shown;
  const checked = sheet.octaves.length + sheet.harmonics.length > 0;
  const section = (title: string, inside: JSX.Element): JSX.Element => (
    <Section
      title={title}
      open={!kept.folded.includes(title)}
      onToggle={(open) =>
        keep({ folded: [...kept.folded.filter((one) => one !== title), ...(open ? [] : [title])] })
      }
    >
      {inside}
    </Section>
  );
  const copy = (text: string, what: string): void => link.send({ kind: 'copy', text, what });
  return (
    <>
      <Head sheet={sheet} done={done} onHandout={(as) => link.send({ kind: 'handout', as })} />
      {section('Strings', <Strings sheet={sheet} />)}
      {checked && section('Checks by ear', <EarChecks sheet={sheet} />)}
      {section(
        'Retuning',
        <Retuning
          retuning={sheet.retuning}
          choices={choices}
          from={kept.from}
          problem={fromProblem}
          onFrom={(from) => {
            keep({ from });
            link.send({ kind: 'from', from });
          }}
        />,
      )}
      {section('Straight barres', <Barres barres={sheet.barres} keyed={sheet.tuning.key !== null} />)}
      {sheet.slide && section('Under a slide', <Slide slide={sheet.slide} />)}
      {section(
        'What the strings bear',
        <Strain strain={strain} problem={strainProblem} told={sheet.retuning.cautions} />,
      )}
      {section('Frets of the scale', <Scale scale={sheet.scale} onCopy={copy} />)}
    </>
  );
}
