import { createHash, type KeyObject, sign, verify } from 'node:crypto';
import {
  Attribute,
  CertificateChoices,
  CertificateSet,
  CMSVersion,
  ContentInfo,
  DigestAlgorithmIdentifier,
  DigestAlgorithmIdentifiers,
  EncapsulatedContentInfo,
  IssuerAndSerialNumber,
  id_data,
  id_signedData,
  SignatureAlgorithmIdentifier,
  SignedData,
  SignerIdentifier,
  SignerInfo,
  SignerInfos,
} from '@peculiar/asn1-cms';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import { Certificate } from '@peculiar/asn1-x509';
import { arrayBuffer, NO_PARAMETERS, RSA_ENCRYPTION, readCertificate, type ShopCertificate } from './certificate.js';
import { setOf, tlv } from './der.js';

/** Who signs: a private key, and the certificate that tells everybody its other half. */
export interface Signer {
  readonly certificate: ShopCertificate;
  readonly privateKey: KeyObject;
}

const SHA256 = '2.16.840.1.101.3.4.2.1';
/** RFC 5652, 11.1 and 11.2; RFC 5035, 3. */
const CONTENT_TYPE = '1.2.840.113549.1.9.3';
const MESSAGE_DIGEST = '1.2.840.113549.1.9.4';
const SIGNING_CERTIFICATE_V2 = '1.2.840.113549.1.9.16.2.47';

const OCTETS_TAG = 0x04;
const SEQUENCE_TAG = 0x30;

/**
 * A detached signature (CMS, RFC 5652) over content of this SHA-256 digest, in DER: RSASSA-PKCS1-v1_5 with SHA-256 over the attributes
 * content type, message digest and signing certificate. It has no time in it and no chance: the same key and content give the same bytes.
 */
export function signDetached(digest: Uint8Array, { certificate, privateKey }: Signer): Uint8Array {
  const attributes = attributesOf(digest, certificate);
  return assembled(certificate, attributes, sign('sha256', signedBytes(attributes), privateKey));
}

interface SignedAttribute {
  readonly attribute: Attribute;
  readonly der: Buffer;
}

function attributesOf(digest: Uint8Array, certificate: ShopCertificate): readonly SignedAttribute[] {
  return [
    new Attribute({ attrType: CONTENT_TYPE, attrValues: [tlvObject(id_data)] }),
    new Attribute({ attrType: MESSAGE_DIGEST, attrValues: [arrayBuffer(tlv(OCTETS_TAG, digest))] }),
    new Attribute({ attrType: SIGNING_CERTIFICATE_V2, attrValues: [arrayBuffer(certificateId(certificate.der))] }),
  ]
    .map((attribute) => ({ attribute, der: Buffer.from(AsnConvert.serialize(attribute)) }))
    .sort((a, b) => Buffer.compare(a.der, b.der));
}

/** The SET of them, whatever tag it has where it stands (RFC 5652, 5.4). */
const signedBytes = (attributes: readonly SignedAttribute[]): Buffer => setOf(attributes.map(({ der }) => der));

function assembled(certificate: ShopCertificate, attributes: readonly SignedAttribute[], signature: Uint8Array): Uint8Array {
  const parsed = AsnConvert.parse(certificate.der, Certificate);
  const { issuer, serialNumber } = parsed.tbsCertificate;
  const digestAlgorithm = new DigestAlgorithmIdentifier({ algorithm: SHA256 });
  const signer = new SignerInfo({
    version: CMSVersion.v1,
    sid: new SignerIdentifier({ issuerAndSerialNumber: new IssuerAndSerialNumber({ issuer, serialNumber }) }),
    digestAlgorithm,
    signedAttrs: attributes.map(({ attribute }) => attribute),
    signatureAlgorithm: new SignatureAlgorithmIdentifier({ algorithm: RSA_ENCRYPTION, parameters: NO_PARAMETERS }),
    signature: new OctetString(signature),
  });
  const data = new SignedData({
    version: CMSVersion.v1,
    digestAlgorithms: new DigestAlgorithmIdentifiers([digestAlgorithm]),
    encapContentInfo: new EncapsulatedContentInfo({ eContentType: id_data }),
    certificates: new CertificateSet([new CertificateChoices({ certificate: parsed })]),
    signerInfos: new SignerInfos([signer]),
  });
  const content = AsnConvert.serialize(data);
  return Buffer.from(AsnConvert.serialize(new ContentInfo({ contentType: id_signedData, content })));
}

/** DER of an object identifier, by the library's own attribute type. */
function tlvObject(identifier: string): ArrayBuffer {
  const der = Buffer.from(AsnConvert.serialize(new Attribute({ attrType: identifier, attrValues: [] })));
  // SEQUENCE { OBJECT IDENTIFIER, SET {} }: what stands between the two heads.
  return arrayBuffer(der.subarray(2, der.length - 2));
}

/** SigningCertificateV2 with one ESSCertIDv2 by SHA-256, which is the default and left out. */
const certificateId = (der: Uint8Array): Buffer =>
  tlv(SEQUENCE_TAG, tlv(SEQUENCE_TAG, tlv(SEQUENCE_TAG, tlv(OCTETS_TAG, createHash('sha256').update(der).digest()))));

export type SignatureRead = { readonly signer: ShopCertificate } | { readonly fault: string };

/** Nobody's signature with one certificate is larger. */
const MOST_BYTES = 64 * 1024;

/**
 * By whom content of this SHA-256 digest was signed: whose certificate stands in the signature, once everything in it fits. The name in
 * the certificate proves nothing; whether its fingerprint is the shop's is for others to say. Never throws.
 */
export function readDetached(der: Uint8Array, digest: Uint8Array): SignatureRead {
  if (der.length > MOST_BYTES) return { fault: 'it is too large to be one' };
  try {
    return checked(der, digest);
  } catch {
    return { fault: 'it cannot be read' };
  }
}

function checked(der: Uint8Array, digest: Uint8Array): SignatureRead {
  const content = AsnConvert.parse(der, ContentInfo);
  if (content.contentType !== id_signedData) return { fault: 'it is not a signature' };
  const data = AsnConvert.parse(content.content, SignedData);
  const [info, ...others] = [...data.signerInfos];
  if (!info || others.length > 0) return { fault: 'it is not of exactly one signer' };
  const [signer, ...more] = certificatesIn(data);
  if (!signer || more.length > 0) return { fault: 'it does not bring the certificate of whoever signed' };
  const told = info.signedAttrs?.find(({ attrType }) => attrType === MESSAGE_DIGEST)?.attrValues[0];
  if (!told || !Buffer.from(told).equals(tlv(OCTETS_TAG, digest))) return { fault: 'the file has changed since it was signed' };
  const signature = Buffer.from(info.signature.buffer);
  const attributes = attributesOf(digest, signer);
  // Every byte is as it is written here, or it is not believed: what a stranger may change in it without breaking it is nothing.
  if (!Buffer.from(assembled(signer, attributes, signature)).equals(der))
    return { fault: 'it is not in the form that is read here' };
  const good = verify('sha256', signedBytes(attributes), signer.key, signature);
  return good ? { signer } : { fault: 'it was not made with the key that it names' };
}

const certificatesIn = ({ certificates }: SignedData): readonly ShopCertificate[] =>
  [...(certificates ?? [])].flatMap(({ certificate }) => {
    const read = certificate && readCertificate(Buffer.from(AsnConvert.serialize(certificate)));
    return read ? [read] : [];
  });
