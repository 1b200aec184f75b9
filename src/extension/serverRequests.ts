import type * as vscode from 'vscode';
import {
  LSPErrorCodes,
  ResponseError,
  WorkDoneProgress,
  type BaseLanguageClient,
  type WorkDoneProgressReport,
} from 'vscode-languageclient';
import type { RequestShapes } from '../server/requests';

/** Requests that tell how far they have come. */
type LongRequest = {
  [Name in keyof RequestShapes]: 'workDoneToken' extends keyof RequestShapes[Name]['params'] ? Name : never;
}[keyof RequestShapes];

/** Pegbox's own requests to the server, each with its types. */
export class ServerRequests {
  private long = 0;

  constructor(private readonly client: BaseLanguageClient) {}

  /** Waits for the server to be there. Rejects when it is not or when the request is not answered. */
  ask<Name extends keyof RequestShapes>(
    name: Name,
    params: RequestShapes[Name]['params'],
  ): Promise<RequestShapes[Name]['answer']> {
    return this.client.sendRequest<RequestShapes[Name]['answer']>(name, params);
  }

  /**
   * Asks what takes long.
   * @param told hears how far it has come
   * @returns undefined when it was cancelled
   */
  async askLong<Name extends LongRequest>(
    name: Name,
    params: RequestShapes[Name]['params'],
    cancellation: vscode.CancellationToken,
    told: (report: Pick<WorkDoneProgressReport, 'percentage' | 'message'>) => void,
  ): Promise<RequestShapes[Name]['answer'] | undefined> {
    const workDoneToken = `pegbox-${++this.long}`;
    const listening = this.client.onProgress(WorkDoneProgress.type, workDoneToken, (value) => {
      if (value.kind === 'report') told(value);
    });
    try {
      const asked = { ...params, workDoneToken };
      return await this.client.sendRequest<RequestShapes[Name]['answer']>(name, asked, cancellation);
    } catch (error) {
      const cancelled = error instanceof ResponseError && error.code === LSPErrorCodes.RequestCancelled;
      if (cancelled || cancellation.isCancellationRequested) return undefined;
      throw error;
    } finally {
      listening.dispose();
    }
  }
}
