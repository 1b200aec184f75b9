import type { InitializeParams } from 'vscode-languageserver';
import type { Settings } from '../service/records';
import { DEFAULT_SETTINGS } from '../service/settings';
import { CODE_SLOT } from './protocolConverter';
import { readSettings } from './settingsReader';

/** What the server needs to know of the client, each with a safe answer when the client does not say. */
export interface ClientFacts {
  /** `workspace/configuration` can be asked. */
  readonly configuration: boolean;
  /** Changes of settings can be registered for. */
  readonly configurationNews: boolean;
  readonly refreshInlayHints: boolean;
  readonly refreshTokens: boolean;
  readonly refreshLenses: boolean;
  /** An offered change may come without its edits, which are asked for when it is taken. */
  readonly resolvesEdits: boolean;
  readonly settings: Settings;
  /** An address with `{code}` in it. */
  readonly helpLink: string | undefined;
  readonly commands: boolean;
  readonly tokensByRange: boolean;
  readonly pictures: boolean;
}

/**
 * Reads the client's half of `initialize`. Malformed options count as not given; `tell` hears of malformed settings.
 */
export function readClientFacts(params: InitializeParams, tell: (problem: string) => void): ClientFacts {
  const { workspace, textDocument } = { ...params.capabilities };
  const resolved: unknown = textDocument?.codeAction?.resolveSupport?.properties;
  const options = asRecord(params.initializationOptions);
  const settings = options['settings'];
  const helpLink = options['helpLink'];
  return {
    configuration: workspace?.configuration === true,
    configurationNews: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    refreshInlayHints: workspace?.inlayHint?.refreshSupport === true,
    refreshLenses: workspace?.codeLens?.refreshSupport === true,
    refreshTokens: workspace?.semanticTokens?.refreshSupport === true,
    resolvesEdits: Array.isArray(resolved) && resolved.includes('edit'),
    settings: settings === undefined ? DEFAULT_SETTINGS : readSettings(settings, tell),
    helpLink: typeof helpLink === 'string' && helpLink.includes(CODE_SLOT) ? helpLink : undefined,
    commands: options['commands'] === true,
    tokensByRange: options['tokensByRange'] === true,
    pictures: options['pictures'] === true,
  };
}

function asRecord(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? { ...value } : {};
}
