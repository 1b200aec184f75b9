import type { Command, Option } from './command';
import { alignedColumns } from './alignedColumns';

const HELP: Option = { name: 'help', help: 'show this help' };

/** The help for the whole program. */
export function programHelp(commands: readonly Command[]): string {
  const rows = commands.map((command) => [`  ${usage(command)}`, command.does]);
  return `Pegbox reads guitar tab in any tuning, written as plain text.

Usage:
${alignedColumns(rows)}

  pegbox COMMAND --help      what a command takes
  pegbox --version           the version

FILE may be - for standard input. Exit code 0: done; 1: check found an error, or the passage cannot be
changed; 2: the command, or a file that it names, cannot be read.
`;
}

/** The help for one command. */
export function commandHelp(command: Command): string {
  const { operands, options, does, required = [] } = command;
  const rows = [
    [`  ${operands.word}`, operands.help],
    ...[...options, HELP].map((option) => [
      `  --${option.name}${option.value === undefined ? '' : ` ${option.value}`}`,
      option.help,
    ]),
  ];
  const must = options.filter(({ name }) => required.includes(name)).map((option) => ` ${optionUse(option)}`);
  const may = options
    .filter(({ name }) => !required.includes(name))
    .map((option) => ` [${optionUse(option)}]`);
  return `${does[0]?.toUpperCase() ?? ''}${does.slice(1)}.

${wrapped([`Usage: pegbox ${command.name} ${operands.word}`, ...must, ...may])}

${alignedColumns(rows)}
`;
}

/** Widest line of a usage, in columns. */
const WIDTH = 110;

/** Pieces in a row, going on in a new line where there is no room. */
function wrapped(pieces: readonly string[]): string {
  const lines: string[] = [];
  for (const piece of pieces) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + piece.length <= WIDTH) lines[lines.length - 1] = last + piece;
    else lines.push(last === undefined ? piece : `      ${piece}`);
  }
  return lines.join('\n');
}

function usage({ name, operands, options, required = [] }: Command): string {
  const must = options.filter((option) => required.includes(option.name)).map(optionUse);
  return ['pegbox', name, operands.word, ...must].join(' ');
}

function optionUse({ name, value }: Option): string {
  return `--${name}${value === undefined ? '' : ` ${value}`}`;
}
