import { kindOf, type Check, type Message } from '../messages/message';

/** What VS Code gives a webview's script, once. */
interface WebviewApi {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): WebviewApi;

/** A view's side of the talk with the extension. */
export interface ExtensionLink<In extends Message, Out extends Message, State> {
  send(message: Out): void;
  /** Hears every message that the view knows; called once. */
  listen(hear: (message: In) => void): void;
  /** What the view last remembered, also after a reload of the window; undefined when there is nothing it knows. */
  remembered(): State | undefined;
  remember(state: State): void;
}

/**
 * Links a view with the extension. To be called once in a page.
 * @param read the reader of the messages to the view
 * @param isState whether a remembered state is one that this version of the view knows
 */
export function linkToExtension<In extends Message, Out extends Message, State>(
  read: (value: unknown) => In | undefined,
  isState: Check<State>,
): ExtensionLink<In, Out, State> {
  const api = acquireVsCodeApi();
  return {
    send: (message) => api.postMessage(message),
    listen(hear) {
      window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
        const message = read(data);
        if (message) hear(message);
        else console.warn(`Pegbox: a message to this view was not understood: ${kindOf(data)}`);
      });
    },
    remembered() {
      const state = api.getState();
      return isState(state) ? state : undefined;
    },
    remember: (state) => api.setState(state),
  };
}
