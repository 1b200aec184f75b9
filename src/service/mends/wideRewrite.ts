/** A change of many systems that is on offer; its edits are worked out when it is taken. */
export interface WideRewrite {
  readonly id: WideRewriteId;
  readonly title: string;
}

export const WIDE_REWRITES = ['counts-of-section', 'counts-of-file'] as const;
export type WideRewriteId = (typeof WIDE_REWRITES)[number];
