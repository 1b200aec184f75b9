import type { TextDocument } from 'vscode';
import { REQUESTS } from '../server/requests';
import type { ConvertRequest } from '../service/serviceApi';
import { halfStepText } from './halfStepText';
import type { RequestedChange } from './requestedChange';
import type { ServerRequests } from './serverRequests';

/** What is asked of a conversion, apart from the passage. */
export type Conversion = Omit<ConvertRequest, 'range' | 'alternatives'>;

/** A conversion as a change that can be shown and made. */
export function conversion(
  requests: Pick<ServerRequests, 'ask'>,
  document: TextDocument,
  request: Conversion,
): RequestedChange {
  const uri = document.uri.toString();
  const words = conversionText(request);
  return {
    ...words,
    ask: (range, alternatives) => requests.ask(REQUESTS.convert, { uri, range, alternatives, ...request }),
  };
}

/**
 * A conversion in words.
 *
 * @example conversionText({ tuning: 'DADGAD' }).asked // 'Convert to DADGAD, keeping the sound'
 */
export function conversionText(request: Conversion): Omit<RequestedChange, 'ask'> {
  const { tuning, instrument, newPart, keep = 'sound', key, objective, by, closed } = request;
  const to = tuning === undefined ? '' : ` to ${tuning}`;
  const on = instrument === undefined ? '' : ` for the ${instrument}`;
  const part = newPart === undefined ? '' : ` as a new part “${newPart}”`;
  const how = [
    `keeping the ${keep}`,
    ...(key === undefined ? [] : [`in ${key}`]),
    ...(by ? [`moved ${halfStepText(by)}`] : []),
    ...(closed ? ['without open strings'] : []),
    ...(objective === 'hardest' ? ['the hardest moment easiest'] : []),
  ].join(', ');
  const after =
    newPart !== undefined
      ? `with “${newPart}”`
      : tuning !== undefined
        ? `in ${tuning}`
        : instrument !== undefined
          ? `for the ${instrument}`
          : 'fingered anew';
  return {
    asked: `Convert${to}${on}${part}, ${how}`,
    done: `Converted${to}${on}${part}, ${how}`,
    after,
  };
}
