/** A value that is made when it is first asked for, and kept. */
export function lazy<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** What `make` gives of an object, made once for each: one shell is asked many times. */
export function onceEach<T extends object, R>(make: (of: T) => R): (of: T) => R {
  const found = new WeakMap<T, { readonly value: R }>();
  return (of) => {
    const known = found.get(of);
    if (known) return known.value;
    const value = make(of);
    found.set(of, { value });
    return value;
  };
}
