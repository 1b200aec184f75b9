import { REQUESTS } from '../../server/requests';
import type { Offer } from '../../service/serviceApi';
import { pick } from '../pick';
import type { RequestedChange } from '../requestedChange';
import type { ServerRequests } from '../serverRequests';

/** Asks which of the requests on offer is to be shown instead. */
export async function pickOffer(offers: readonly Offer[]): Promise<Offer | undefined> {
  const items = offers.map((offer) => {
    // `Move 3 notes to another octave; every note has a place`: what is done, then what comes of it.
    const [label = offer.title, ...rest] = offer.title.split('; ');
    return { label, detail: rest.join('; '), offer };
  });
  const placeholder = 'What may change, so that less is left out? The preview shows it.';
  return (await pick(items, { title: 'Make it fit', placeholder }))?.offer;
}

/** A change with a request on offer in its stead. */
export function offeredChange(
  { asked, done, after }: RequestedChange,
  { title, request }: Offer,
  requests: Pick<ServerRequests, 'ask'>,
  uri: string,
): RequestedChange {
  const with_ = `. ${title}`;
  return {
    asked: `${asked}${with_}`,
    done: `${done}${with_}`,
    after,
    ask: (range, alternatives) => requests.ask(REQUESTS.convert, { ...request, uri, range, alternatives }),
  };
}
