/** Where the page of a rule is found; none where it is asked for by its name. */
export type RuleLink = (rule: string) => string | undefined;
