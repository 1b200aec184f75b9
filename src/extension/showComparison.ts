import type * as vscode from 'vscode';
import { REQUESTS } from '../server/requests';
import type { CompareAnswer } from '../service/compare/compareAnswer';
import type { ServiceError } from '../service/serviceApi';
import { refuse } from './applyChange';
import { comparePage, type ComparedVersions } from './comparePage';
import type { HelpPages } from './helpPages';
import type { ServerRequests } from './serverRequests';

const PAGE = '/What changed.md';

/** Shows a page of what became of the notes of an earlier text in an open document, and gives back the answer. */
export async function showComparison(
  { requests, pages }: { readonly requests: ServerRequests; readonly pages: HelpPages },
  document: vscode.TextDocument,
  before: string,
  versions: ComparedVersions,
): Promise<CompareAnswer | ServiceError> {
  const answer = await requests.ask(REQUESTS.compare, { uri: document.uri.toString(), before });
  if ('error' in answer) return refuse(answer.error);
  pages.put(PAGE, comparePage(versions, answer));
  await pages.show(PAGE);
  return answer;
}
