/** `AP-01`, `AP-02` … one after the other. */
export function counter(stem: string, digits = 2): () => string {
  let n = 0;
  return () => {
    n += 1;
    return `${stem}-${String(n).padStart(digits, '0')}`;
  };
}
