import * as vscode from 'vscode';

export interface PickOptions<T> {
  readonly title: string;
  readonly placeholder: string;
  /** The item that is chosen when the user just presses Enter. */
  readonly active?: T | undefined;
}

/** A pick list with one item already active. Undefined when the user leaves it. */
export function pick<T extends vscode.QuickPickItem>(
  items: readonly T[],
  { title, placeholder, active }: PickOptions<T>,
): Promise<T | undefined> {
  const list = vscode.window.createQuickPick<T>();
  list.title = title;
  list.placeholder = placeholder;
  list.matchOnDescription = true;
  list.matchOnDetail = true;
  list.items = items;
  if (active !== undefined) list.activeItems = [active];
  return new Promise((resolve) => {
    list.onDidAccept(() => {
      // Enter on a list that is not shown yet, or that nothing matches, chooses nothing.
      const chosen = list.selectedItems[0] ?? list.activeItems[0];
      if (chosen === undefined) return;
      resolve(chosen);
      list.hide();
    });
    list.onDidHide(() => {
      resolve(undefined);
      list.dispose();
    });
    list.show();
  });
}
