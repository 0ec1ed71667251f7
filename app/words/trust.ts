// trust/go-on-trusted.tsx
export const goOnOverTrustedLine = 'Go on over the trusted line'
export const warningMeans = (origin: string) => `${origin}. A warning here means that the steps above are not done yet.`

// trust/page.tsx
export const makeThisPhoneTrustSet = 'Make this phone trust the set'
export const thisPhoneIsOnTrusted = 'This phone is on the trusted line.'
export const oncePerPhone = 'Once per phone, about two minutes.'
export const whatTrustBrings =
  'Then the board works without a network, keeps the screen lit and rings while you look elsewhere. Without it the board still works as long as its page is open.'
export const downloadCertificate = 'Download the certificate'
export const fingerprintMustBe = 'Where the phone shows a fingerprint, it must be this one:'
export const shaOfGoodUntil = (subject: string, ends: string) => `SHA-256, of “${subject}”, good until ${ends}.`
export const whatThisPhoneThenTrusts = 'What this phone then trusts'
export const whatIsTrusted =
  'Only names that end in .local, this computer’s own name and addresses of local networks: the certificate says so itself, and the phone keeps to it. After the shoot you can remove it where you installed it.'
export const thisPhoneIsOnTrustedLine = 'This phone is on a trusted line.'
export const thereIsNoTrustedLine = 'There is no trusted line here.'
export const proxyKeepsIt = 'Whoever runs the proxy before Emberslate keeps its certificate.'
export const startWithCrew =
  'Start Emberslate with npm start -- --crew; behind a proxy, open the proxy’s own https address.'
export const installItByWhatPhone = 'Install it, by what the phone says:'
export const aPhoneWithProfile = 'A phone that says: profile downloaded'
export const withProfile = 'It says “Profile Downloaded”'
export const installProfile = 'Open Settings. At the top, tap “Profile Downloaded”, then Install.'
export const switchItOn = 'Still in Settings: General, About, Certificate Trust Settings. Switch “Emberslate set …” on.'
export const aPhoneThatSaysNothing = 'A phone that says nothing, or asks what the certificate is for'
export const saysNothing = 'It says nothing, or asks what it is for'
export const openSettingsAndSearch =
  'Open Settings and search for “CA certificate” (mostly under Security, Encryption and credentials, Install a certificate).'
export const installAnyway = 'Tap CA certificate, Install anyway, and choose emberslate-set.crt.'
