/** A start that cannot go on, told in one sentence a person can act on; printed without a stack. */
export class Refusal extends Error {}
