import * as vscode from 'vscode';

export interface AskText {
  readonly title: string;
  readonly prompt: string;
  readonly placeholder?: string;
  /** Stands in the box from the start. */
  readonly value?: string;
  /** What is to be said of a text that is not empty: a sentence why it will not do, or a message; nothing when it will. */
  readonly check: (text: string) => Promise<string | vscode.InputBoxValidationMessage | undefined>;
}

/**
 * A box for one line. Empty it says nothing, and Enter does nothing; a text that will not do is told while one types,
 * and not accepted. Undefined when the user leaves it.
 *
 * @param box for tests
 */
export function askText(
  { title, prompt, placeholder, value = '', check }: AskText,
  box: vscode.InputBox = vscode.window.createInputBox(),
): Promise<string | undefined> {
  box.title = title;
  box.prompt = prompt;
  box.placeholder = placeholder;
  if (value !== '') box.value = value;
  let judging: Promise<boolean> | undefined;

  /** Whether the text will do. While one check runs, only the newest text waits for the next. */
  const judge = async (): Promise<boolean> => {
    for (;;) {
      const text = box.value;
      const said = text.trim() === '' ? undefined : await check(text).catch(told);
      if (box.value !== text) continue;
      box.validationMessage = said;
      return text.trim() !== '' && !isError(said);
    }
  };
  const judged = (): Promise<boolean> => (judging ??= judge().finally(() => (judging = undefined)));

  return new Promise((resolve) => {
    box.onDidChangeValue(() => void judged());
    box.onDidAccept(async () => {
      if (!(await judged())) return;
      resolve(box.value);
      box.hide();
    });
    box.onDidHide(() => {
      resolve(undefined);
      box.dispose();
    });
    box.show();
  });
}

function isError(said: string | vscode.InputBoxValidationMessage | undefined): boolean {
  if (typeof said === 'object') return said.severity === vscode.InputBoxValidationSeverity.Error;
  return said !== undefined && said !== '';
}

function told(error: unknown): string {
  return `Pegbox could not check this: ${error instanceof Error ? error.message : String(error)}`;
}
