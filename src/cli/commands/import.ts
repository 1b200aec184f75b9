import { mkdir, readdir, stat, writeFile } from 'node:fs/promises';
import { basename, extname, join, relative } from 'node:path';
import type { ImportAnswer } from '../../formats/plainTab/importAnswer';
import { readPlainTab } from '../../formats/plainTab/readPlainTab';
import { GUITAR, readInstrument } from '../../instrument/instruments';
import { readTuning } from '../../instrument/tuningValue';
import type { Settings } from '../../service/records';
import type { Asked, Command } from '../command';
import { JSON_OPTION, TUNINGS } from '../commonOptions';
import { EXIT } from '../exitCodes';
import type { Output } from '../output';
import { Refusal } from '../refusal';
import { settingsOf } from '../settings';
import { readTextFile } from '../textFile';

/** Reads plain tab into files of its own, each beside its text or in a folder. */
export const importTab: Command = {
  name: 'import',
  does: 'read plain tab, such as from a page or a mail: a .pegbox file for each text, and what was guessed',
  operands: {
    word: 'FILE|FOLDER…',
    help: 'plain texts, folders of .txt and .tab files, or - for standard input, which answers on standard output',
    many: true,
  },
  options: [
    { name: 'out', value: 'DIR', help: 'where the new files go; else each stands beside its text' },
    { name: 'tuning', value: 'T', help: 'the tuning, where you know it: a name, or notes low to high' },
    { name: 'instrument', value: 'NAME', help: 'the instrument, where you know it' },
    { name: 'force', help: 'write over .pegbox files that are there' },
    JSON_OPTION,
    TUNINGS,
  ],
  async run(asked, output) {
    const settings = await settingsOf(asked);
    const wishes = wishesOf(asked, settings);
    const texts = (await Promise.all(asked.operands.map(textsOf))).flat();
    if (texts.length === 0) throw new Refusal('There are no .txt or .tab files in there.');
    const out = asked.values.get('out');
    const results: ImportResult[] = [];
    // Everything is read before anything is written.
    for (const { name, folder } of texts) {
      const { text } = await readTextFile(name);
      const answer = readPlainTab(text, { ...wishes, settings });
      results.push({ name, file: answer.systems === 0 ? null : targetOf({ name, folder }, out), answer });
    }
    const targets = results.map(({ file }) => file);
    refuseTwice(targets);
    if (!asked.flags.has('force')) await refuseOverwriting(targets);
    for (const { name, file, answer } of results) {
      if (file !== null) await write(file, answer.text);
      else if (answer.systems > 0 && !asked.flags.has('json')) output.text(ended(answer.text));
      tell(name, file, answer, output);
    }
    if (asked.flags.has('json'))
      output.json(
        results.map(({ name, file, answer: { systems, guesses, fields, text } }) => ({
          from: name,
          file,
          systems,
          fields,
          guesses: guesses.map(({ kind, words, line }) => ({ kind, words, line: line + 1 })),
          ...(file === null && { text }),
        })),
      );
    return results.some(({ answer }) => answer.systems > 0) ? EXIT.done : EXIT.refused;
  },
};

interface ImportResult {
  readonly name: string;
  readonly file: string | null;
  readonly answer: ImportAnswer;
}

function wishesOf(
  { values }: Asked,
  settings: Settings,
): { readonly instrument?: string; readonly tuning?: string } {
  const instrument = values.get('instrument');
  const tuning = values.get('tuning');
  const known = instrument === undefined ? undefined : readInstrument(instrument);
  if (known && !known.ok) throw new Refusal(known.error.message);
  if (tuning !== undefined) {
    const read = readTuning(tuning, { instrument: known?.value ?? GUITAR, userTunings: settings.tunings });
    if (!read.ok) throw new Refusal(read.error.message);
  }
  return { ...(instrument !== undefined && { instrument }), ...(tuning !== undefined && { tuning }) };
}

/** A text to read; `folder` is the operand that it was found in. */
interface Text {
  readonly name: string;
  readonly folder: string | undefined;
}

/** Files that hold plain tab by their name. */
const ENDINGS: ReadonlySet<string> = new Set(['.txt', '.tab', '.text']);

async function textsOf(operand: string): Promise<Text[]> {
  if (operand === '-') return [{ name: operand, folder: undefined }];
  const folder = await stat(operand).then(
    (found) => found.isDirectory(),
    () => false, // reading it tells why
  );
  if (!folder) return [{ name: operand, folder: undefined }];
  const entries = await readdir(operand, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile() && ENDINGS.has(extname(entry.name).toLowerCase()))
    .map((entry) => ({ name: join(entry.parentPath, entry.name), folder: operand }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The new file; null for standard output. Folders keep their folders. */
function targetOf({ name, folder }: Text, out: string | undefined): string | null {
  if (name === '-') return null;
  const bare = name.slice(0, name.length - extname(name).length);
  const place =
    out === undefined ? bare : join(out, folder === undefined ? basename(bare) : relative(folder, bare));
  return `${place}.pegbox`;
}

async function refuseOverwriting(targets: readonly (string | null)[]): Promise<void> {
  for (const target of targets) {
    if (target === null) continue;
    const there = await stat(target).then(
      () => true,
      () => false,
    );
    if (there)
      throw new Refusal(`${target} is there already, so nothing was written; give --force to write over it.`);
  }
}

function refuseTwice(targets: readonly (string | null)[]): void {
  const twice = targets.find((target, i) => target !== null && targets.indexOf(target) !== i);
  if (twice !== undefined && twice !== null)
    throw new Refusal(`Two texts would become ${twice}; import them one at a time, or with --out.`);
}

async function write(file: string, text: string): Promise<void> {
  try {
    await mkdir(join(file, '..'), { recursive: true });
    await writeFile(file, ended(text));
  } catch (error) {
    const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
    throw new Refusal(`${file} cannot be written (${code ?? String(error)}).`);
  }
}

function ended(text: string): string {
  return text.endsWith('\n') ? text : `${text}\n`;
}

function tell(name: string, file: string | null, { systems, guesses }: ImportAnswer, output: Output): void {
  const from = name === '-' ? 'standard input' : name;
  if (systems === 0) {
    output.report(`${from}: no line looks like the string of an instrument, so nothing was written.\n`);
    return;
  }
  const count = `${systems} system${systems === 1 ? '' : 's'}`;
  output.report(`${from}: ${count}${file === null ? '' : ` in ${file}`}\n`);
  for (const { words, line } of guesses) output.report(`  line ${line + 1}: ${words}\n`);
}
