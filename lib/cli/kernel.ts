import { writeFileSync } from 'node:fs'
import { BYTES_FILE, kernelModule } from './assemble-kernel'

/** Writes the kernel's bytes after its source has changed. */
writeFileSync(BYTES_FILE, await kernelModule())
