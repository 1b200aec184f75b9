import * as vscode from 'vscode';
import { REQUESTS, type CommandTarget } from '../../server/requests';
import type { ChordChart, ShapeWishes } from '../../service/song/songAnswer';
import { refuse } from '../applyChange';
import { rangeOf } from '../changeCommand';
import { ChartPage } from '../chartPage';
import { plainRange } from '../ranges';
import { fileName } from '../fileName';
import { saveFile } from '../saveFile';
import type { ServerRequests } from '../serverRequests';
import { apartFromTarget, findTarget } from '../target';

export interface ChartArguments extends CommandTarget, ShapeWishes {
  /** The address of the file to write, for saving; asked for when it is left out. */
  readonly to?: string;
}

/** Shows the chart of what is selected, else of the whole file, and saves it as a picture. */
export function registerChordChart(requests: ServerRequests): vscode.Disposable {
  const page = new ChartPage();

  const ask = async (
    given: ChartArguments | undefined,
  ): Promise<{ chart: ChordChart; document: vscode.TextDocument } | undefined> => {
    const target = await findTarget(given);
    if (!target) return undefined;
    const { document } = target;
    const range = rangeOf(target);
    const { style, highestFret, open } = apartFromTarget(given);
    const answer = await requests.ask(REQUESTS.chordChart, {
      uri: document.uri.toString(),
      range: range && plainRange(range),
      ...(style && { style }),
      ...(highestFret !== undefined && { highestFret }),
      ...(open !== undefined && { open }),
    });
    if (!('error' in answer)) return { chart: answer, document };
    void vscode.window.showErrorMessage(answer.error);
    return undefined;
  };

  const show = async (given?: ChartArguments): Promise<ChordChart | undefined> => {
    const asked = await ask(given);
    if (asked) page.show(asked.chart);
    return asked?.chart;
  };

  const save = async (given?: ChartArguments): Promise<string | undefined> => {
    const asked = await ask(given);
    if (!asked) return undefined;
    const { chart, document } = asked;
    const to = given?.to === undefined ? undefined : vscode.Uri.parse(given.to, true);
    const name = `${(chart.title ?? 'chords').replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()}-chart`;
    const file = await saveFile(
      { title: 'Save chord chart', name, text: chart.svg, ending: 'svg' },
      document.uri,
      to,
    );
    if (!file) return undefined;
    const words = `Saved ${fileName(file)}.`;
    void vscode.window.showInformationMessage(words);
    return words;
  };

  const told =
    <T>(run: (given?: ChartArguments) => Promise<T>) =>
    async (given?: ChartArguments): Promise<unknown> => {
      try {
        return await run(given);
      } catch (error) {
        return refuse(`Pegbox could not do this: ${error instanceof Error ? error.message : String(error)}`);
      }
    };

  return vscode.Disposable.from(
    page,
    vscode.commands.registerCommand('pegbox.showChordChart', told(show)),
    vscode.commands.registerCommand('pegbox.saveChordChart', told(save)),
  );
}
