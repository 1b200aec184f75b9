import { parseArgs } from 'node:util';
import { nearestNames } from '../instrument/nameMatching';
import type { Asked, Command, Option } from './command';
import { Refusal } from './refusal';

/** No argument of a process can hold it. */
const MARK = '\0';

/**
 * Reads what stands behind a command's name; `help` when that is asked for. An argument such as `-2` is a number,
 * never an option, so that `--by -2` and `standard -2` need no quotes.
 * @throws {Refusal} for an unknown or repeated option, a missing value or operand, and an operand too many
 * @example readArguments(convert, ['a.pegbox', '--tuning', 'DADGAD'])
 */
export function readArguments(command: Command, args: readonly string[]): Asked | 'help' {
  const { tokens } = parseArgs({
    args: args.map((arg) => (/^-\d/.test(arg) ? MARK + arg : arg)),
    options: {
      help: { type: 'boolean', short: 'h' },
      ...Object.fromEntries(command.options.map(({ name, value }) => [name, { type: kindOf(value) }])),
    },
    strict: false, // its own messages are several sentences about programming
    tokens: true,
  });
  if (tokens.some((token) => token.kind === 'option' && token.name === 'help')) return 'help';

  const operands: string[] = [];
  const values = new Map<string, string>();
  const flags = new Set<string>();
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(unmarked(token.value));
    if (token.kind !== 'option') continue;
    const option = command.options.find(({ name }) => name === token.name);
    if (!option) throw new Refusal(unknownOption(token.rawName, command));
    if (values.has(option.name) || flags.has(option.name))
      throw new Refusal(`--${option.name} is given twice; give it once.`);
    if (option.value === undefined) {
      if (token.value !== undefined)
        throw new Refusal(`--${option.name} takes no value; leave “=${token.value}” out.`);
      flags.add(option.name);
    } else {
      values.set(option.name, valueOf(option, token.value, token.inlineValue === true));
    }
  }
  for (const name of command.required ?? []) {
    const option = command.options.find((candidate) => candidate.name === name);
    if (!values.has(name)) throw new Refusal(`${shown(option)} is missing: ${option?.help ?? 'give it'}.`);
  }
  return { operands: checkedOperands(command, operands), values, flags };
}

function kindOf(value: string | undefined): 'string' | 'boolean' {
  return value === undefined ? 'boolean' : 'string';
}

function unmarked(text: string): string {
  return text.replaceAll(MARK, '');
}

function unknownOption(rawName: string, { name, options }: Command): string {
  const names = [...options.map((option) => option.name), 'help'];
  const [near] = nearestNames(rawName, names, 1);
  const offer = near === undefined ? '' : ` Did you mean --${near}?`;
  return `There is no option ${rawName}.${offer} “pegbox ${name} --help” lists them.`;
}

/** A value that looks like an option is one whose value was forgotten, unless it stands behind `=`. */
function valueOf(option: Option, value: string | undefined, inline: boolean): string {
  const forgotten = value === undefined || value === '' || (!inline && /^--?[a-z]/i.test(value));
  if (forgotten) throw new Refusal(`${shown(option)} has no value: ${option.help}.`);
  return unmarked(value);
}

function shown(option: Option | undefined): string {
  return option ? `--${option.name}${option.value === undefined ? '' : ` ${option.value}`}` : 'An option';
}

function checkedOperands({ name, operands }: Command, given: readonly string[]): Asked['operands'] {
  const [first, ...more] = given;
  if (first === undefined && operands.optional === true) return [''];
  if (first === undefined)
    throw new Refusal(`${operands.word} is missing: ${operands.help}; see “pegbox ${name} --help”.`);
  const [tooMany] = more;
  if (tooMany !== undefined && !operands.many)
    throw new Refusal(
      `One ${operands.word} is expected; “${tooMany}” is one too many. A value of several words stands in quotes.`,
    );
  return [first, ...more];
}
