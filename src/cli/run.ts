import { version } from '../../package.json';
import { nearestNames } from '../instrument/nameMatching';
import { readArguments } from './arguments';
import { COMMANDS } from './commands';
import { EXIT, type ExitCode } from './exitCodes';
import { commandHelp, programHelp } from './help';
import type { Output } from './output';
import { Refusal } from './refusal';

/**
 * Does what a command line asks.
 * @param args what stands behind the program's name
 * @returns the exit code; every failure has been told on standard error
 */
export async function run(args: readonly string[], output: Output): Promise<ExitCode> {
  try {
    return await runCommand(args, output);
  } catch (error) {
    if (error instanceof Refusal) {
      output.report(`pegbox: ${error.message.replace(/\s*[\r\n]+\s*/g, ' ')}\n`);
      return error.exitCode;
    }
    output.report(
      `pegbox: a fault in Pegbox itself. ${error instanceof Error ? error.stack : String(error)}\n`,
    );
    return EXIT.fault;
  }
}

async function runCommand([first, ...rest]: readonly string[], output: Output): Promise<ExitCode> {
  if (first === undefined)
    throw new Refusal(`Give a command: ${names()}. “pegbox --help” tells what they do.`);
  if (first === '--help' || first === '-h') {
    output.text(programHelp(COMMANDS));
    return EXIT.done;
  }
  if (first === '--version') {
    output.text(`${version}\n`);
    return EXIT.done;
  }
  const command = COMMANDS.find(({ name }) => name === first);
  if (!command) throw new Refusal(unknownCommand(first));
  const asked = readArguments(command, rest);
  if (asked === 'help') {
    output.text(commandHelp(command));
    return EXIT.done;
  }
  return command.run(asked, output);
}

function unknownCommand(word: string): string {
  const option = word.startsWith('-');
  const known = option ? ['--help', '--version'] : COMMANDS.map(({ name }) => name);
  const [near] = nearestNames(word, known, 1);
  const offer = near === undefined ? `The commands are ${names()}.` : `Did you mean ${near}?`;
  return option
    ? `There is no option ${word} before a command. ${offer}`
    : `There is no command “${word}”. ${offer} “pegbox --help” tells what they do.`;
}

function names(): string {
  return COMMANDS.map(({ name }) => name).join(', ');
}
