import type { BaseLanguageClient } from 'vscode-languageclient';
import type { RequestShapes } from '../server/requests';

/** Pegbox's own requests to the server, each with its types. */
export class ServerRequests {
  constructor(private readonly client: BaseLanguageClient) {}

  /** Waits for the server to be there. Rejects when it is not or when the request is not answered. */
  ask<Name extends keyof RequestShapes>(
    name: Name,
    params: RequestShapes[Name]['params'],
  ): Promise<RequestShapes[Name]['answer']> {
    return this.client.sendRequest<RequestShapes[Name]['answer']>(name, params);
  }
}
