/** For an option that may be repeated: all of its values, in order. Undefined where it was not given. */
export const gather = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];
