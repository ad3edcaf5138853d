/** Public keys as SSH writes them (RFC 4253, 6.6; RFC 8709 for Ed25519), which Git signs commits and tags with. */
const KEY =
  /^(ssh-ed25519|ssh-rsa|ecdsa-sha2-nistp(?:256|384|521)|sk-ssh-ed25519@openssh\.com)\s+([A-Za-z0-9+/]{40,}={0,3})(?:\s|$)/u;

/** Kind and body of a person's public key, without whoever's name stands behind it; undefined where it is none. */
export function readPersonKey(typed: string): string | undefined {
  const [, kind, body = ''] = KEY.exec(typed.trim()) ?? [];
  if (kind === undefined) return undefined;
  // The body names its kind again.
  const bytes = Buffer.from(body, 'base64');
  const named = bytes.subarray(4, 4 + (bytes.length > 4 ? bytes.readUInt32BE(0) : 0)).toString('latin1');
  return named === kind ? `${kind} ${body}` : undefined;
}
