/** A certificate authority of this computer's own, and the certificate of the set that it signs. Plain Node, run by `npm start -- --crew`. */
import { generateKeyPairSync, randomBytes } from 'node:crypto'
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import path from 'node:path'
import { isPrivateAddress, lanAddresses, lanNames } from '../data/door/lan-names.mjs'

const DAY_MS = 86_400_000
const AUTHORITY_DAYS = 730
/** Phones refuse a certificate of a private authority that is good for more than 825 days. */
const CERTIFICATE_DAYS = 90
const RENEW_DAYS = 30

/** RFC 1918, 3927, 4193, 4291 and 6598: addresses that nobody reaches from outside. */
const PRIVATE = [
  ['0a000000', 'ff000000'],
  ['ac100000', 'fff00000'],
  ['c0a80000', 'ffff0000'],
  ['a9fe0000', 'ffff0000'],
  ['64400000', 'ffc00000'],
  ['7f000000', 'ff000000'],
  [`fc${'00'.repeat(15)}`, `fe${'00'.repeat(15)}`],
  [`fe80${'00'.repeat(14)}`, `ffc0${'00'.repeat(14)}`],
]

const isName = (name) => !/^[\d.]+$|:/.test(name)
/** What phones open the set by; a public address gets none, since the authority may not speak for it. */
function namesNow(given) {
  const addresses = lanAddresses().map((address) => address.replace(/^\[|\]$/g, ''))
  return ['localhost', ...lanNames(given), '127.0.0.1', ...addresses.filter((address) => isPrivateAddress(address))]
}

function newKeys(forge) {
  const { privateKey, publicKey } = generateKeyPairSync('rsa', {
    modulusLength: 2048,
    privateKeyEncoding: { type: 'pkcs8', format: 'pem' },
    publicKeyEncoding: { type: 'spki', format: 'pem' },
  })
  return { pem: privateKey, own: forge.pki.privateKeyFromPem(privateKey), open: forge.pki.publicKeyFromPem(publicKey) }
}

/** The name constraints of RFC 5280, 4.2.1.10: whoever steals this authority still cannot pass for a site of the world. */
function constraints({ asn1, util }, names) {
  const { Class, Type } = asn1
  const subtree = (kind, value) =>
    asn1.create(Class.UNIVERSAL, Type.SEQUENCE, true, [asn1.create(Class.CONTEXT_SPECIFIC, kind, false, value)])
  const trees = [
    ...names.map((name) => subtree(2, name)),
    ...PRIVATE.map(([address, mask]) => subtree(7, util.hexToBytes(address + mask))),
  ]
  const permitted = asn1.create(Class.CONTEXT_SPECIFIC, 0, true, trees)
  return asn1.toDer(asn1.create(Class.UNIVERSAL, Type.SEQUENCE, true, [permitted])).getBytes()
}

function signed(forge, { keys, subject, issuer, by, days, extensions }) {
  const certificate = forge.pki.createCertificate()
  certificate.publicKey = keys.open
  certificate.serialNumber = `00${randomBytes(15).toString('hex')}`
  certificate.validity.notBefore = new Date(Date.now() - DAY_MS)
  certificate.validity.notAfter = new Date(Date.now() + days * DAY_MS)
  certificate.setSubject(subject)
  certificate.setIssuer(issuer)
  certificate.setExtensions(extensions)
  certificate.sign(by, forge.md.sha256.create())
  return { pem: forge.pki.certificateToPem(certificate), ends: certificate.validity.notAfter.getTime() }
}

function makeAuthority(forge, names) {
  const keys = newKeys(forge)
  const covers = [
    ...new Set(['local', 'localhost', ...names.filter((name) => isName(name) && !name.endsWith('.local'))]),
  ]
  const subject = [{ name: 'commonName', value: `Emberslate set on ${hostname()}` }]
  const { pem, ends } = signed(forge, {
    keys,
    subject,
    issuer: subject,
    by: keys.own,
    days: AUTHORITY_DAYS,
    extensions: [
      { name: 'basicConstraints', cA: true, pathLenConstraint: 0, critical: true },
      { name: 'keyUsage', keyCertSign: true, cRLSign: true, critical: true },
      { name: 'subjectKeyIdentifier' },
      { id: '2.5.29.30', critical: true, value: constraints(forge, covers) },
    ],
  })
  return { certificate: pem, key: keys.pem, ends, covers }
}

function makeCertificate(forge, authority, names) {
  const keys = newKeys(forge)
  const above = forge.pki.certificateFromPem(authority.certificate)
  const { pem, ends } = signed(forge, {
    keys,
    subject: [{ name: 'commonName', value: 'Emberslate' }],
    issuer: above.subject.attributes,
    by: forge.pki.privateKeyFromPem(authority.key),
    days: CERTIFICATE_DAYS,
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, keyEncipherment: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: names.map((name) => (isName(name) ? { type: 2, value: name } : { type: 7, ip: name })),
      },
      { name: 'authorityKeyIdentifier', keyIdentifier: above.generateSubjectKeyIdentifier().getBytes() },
    ],
  })
  return { certificate: pem, key: keys.pem, ends, names }
}

const isFresh = (one) => one && one.ends - Date.now() > RENEW_DAYS * DAY_MS
const speaksFor = ({ covers }, name) => !isName(name) || covers.some((one) => name === one || name.endsWith(`.${one}`))

function readKept(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return {}
  }
}

/**
 * What the TLS line needs, made where it is missing, runs out or no longer names this machine. `newAuthority` is true where
 * phones have to trust anew: at a start, never while the set is `serving`; a name that came meanwhile is left out then.
 */
export async function setCertificate(folder, given, serving = false) {
  const { default: forge } = await import('node-forge')
  const file = path.join(folder, 'door', 'tls.json')
  const kept = readKept(file)
  const all = namesNow(given)
  const stands = serving || (isFresh(kept.authority) && all.every((name) => speaksFor(kept.authority, name)))
  const newAuthority = !kept.authority || !stands
  const names = newAuthority ? all : all.filter((name) => speaksFor(kept.authority, name))
  const authority = newAuthority ? makeAuthority(forge, names) : kept.authority
  const same = isFresh(kept.set) && names.join() === kept.set.names.join()
  if (!newAuthority && same) return { ...kept.set, changed: false, newAuthority }
  const set = makeCertificate(forge, authority, names)
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 })
  writeFileSync(`${file}.new`, JSON.stringify({ authority, set }), { mode: 0o600 })
  renameSync(`${file}.new`, file)
  return { ...set, changed: true, newAuthority }
}
