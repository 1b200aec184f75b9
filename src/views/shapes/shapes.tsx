import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { FromShapes, ShapesTab, ToShapes } from '../messages/shapesMessages';
import type { ExtensionLink } from '../shared/extensionLink';
import { Status } from '../shared/status';
import { Tabs } from '../shared/tabs';
import { Cards } from './cards';
import { ChordBox } from './chordBox';
import { Kin } from './kin';
import { AT_FIRST, type Remembered } from './remembered';
import { Song } from './song';

export interface ShapesProps {
  readonly link: ExtensionLink<ToShapes, FromShapes, Remembered>;
}

type Answer<Tab extends ShapesTab> = Extract<ToShapes, { kind: Tab }>;

/** What each tab shows; an answer stays until the next one, so that nothing jumps while one types. */
interface Answers {
  readonly shapes?: Answer<'shapes'>;
  readonly kin?: Answer<'kin'>;
  readonly song?: Answer<'song'>;
}

/** After so many milliseconds without a key the chord is looked up. */
const TYPING = 250;

const TABS = [
  { name: 'shapes', title: 'Shapes' },
  { name: 'kin', title: 'What became of my shape' },
  { name: 'song', title: 'This song' },
] as const;

/** Shapes of a chord in the tuning in force, what became of a shape of the usual tuning, and of all of a song's. */
export function Shapes({ link }: ShapesProps): JSX.Element {
  const [kept, setKept] = useState(() => link.remembered() ?? AT_FIRST);
  const [answers, setAnswers] = useState<Answers>({});
  const [problem, setProblem] = useState<{ readonly tab: ShapesTab; readonly words: string }>();
  const [done, setDone] = useState('');
  const [begins, setBegins] = useState(0);
  const latest = useRef(kept);
  const waiting = useRef<ReturnType<typeof setTimeout>>();
  const box = useRef<HTMLInputElement>(null);

  const keep = (change: Partial<Remembered>): void => {
    latest.current = { ...latest.current, ...change };
    link.remember(latest.current);
    setKept(latest.current);
  };
  const ask = (): void => {
    clearTimeout(waiting.current);
    const { tab, chord } = latest.current;
    link.send({ kind: 'ask', tab, chord });
  };
  const choose = (shape: string): void => {
    keep({ shape });
    link.send({ kind: 'chosen', shape });
  };

  useEffect(() => {
    link.listen((message) => {
      switch (message.kind) {
        case 'problem':
          return setProblem(message);
        case 'done':
          return setDone(message.words);
        case 'begin':
          if (message.chord !== null) keep({ chord: message.chord });
          if (latest.current.tab === 'song') keep({ tab: 'shapes' });
          setBegins((times) => times + 1);
          return ask();
        case 'shapes': {
          const { shapes } = message.answer;
          // The chosen shape stays chosen as long as it is there.
          const still = shapes.find(({ text }) => text === latest.current.shape) ?? shapes[0];
          choose(still?.text ?? '');
          break;
        }
        case 'kin':
        case 'song':
      }
      setProblem(undefined);
      setAnswers((before) => ({ ...before, [message.kind]: message }));
    });
    link.send({ kind: 'ready', tab: latest.current.tab, chord: latest.current.chord });
    return () => clearTimeout(waiting.current);
  }, []);

  // The box is there, and holds the chord, only after it is drawn.
  useEffect(() => {
    if (begins === 0) return;
    box.current?.focus();
    box.current?.select();
  }, [begins]);

  useEffect(() => {
    const timer = setTimeout(() => setDone(''), 5000);
    return () => clearTimeout(timer);
  }, [done]);

  const { tab, chord, shape } = kept;
  const wrong = problem?.tab === tab ? problem.words : '';
  return (
    <>
      <h1 class="unseen">Shapes</h1>
      <Tabs
        label="What to look at"
        tabs={TABS}
        chosen={tab}
        onChoose={(name) => {
          keep({ tab: name });
          ask();
        }}
      >
        <div class="line">
          {tab !== 'song' && (
            <ChordBox
              box={box}
              tab={tab}
              chord={chord}
              problem={wrong}
              onInput={(text) => {
                keep({ chord: text });
                clearTimeout(waiting.current);
                waiting.current = setTimeout(ask, TYPING);
              }}
              onEnter={ask}
            />
          )}
          <Status words={done} />
        </div>
        {tab === 'shapes' && answers.shapes && chord.trim() !== '' && (
          <Cards
            answer={answers.shapes.answer}
            // What stands there is no answer to what stands in the box.
            stale={wrong !== ''}
            chosen={shape}
            onChoose={choose}
            onDo={(kind) => link.send({ kind, shape: latest.current.shape })}
          />
        )}
        {tab === 'kin' && answers.kin && wrong === '' && chord.trim() !== '' && (
          <Kin kin={answers.kin.answer} />
        )}
        {tab === 'song' && wrong !== '' && <p>{wrong}</p>}
        {tab === 'song' && wrong === '' && answers.song && (
          <Song song={answers.song.answer} onGo={(line, column) => link.send({ kind: 'go', line, column })} />
        )}
      </Tabs>
    </>
  );
}
