//! What becomes of memory that a frame has done with.

use std::hint::black_box;

/// Memory that the allocator may hold on to, bytes: more than a frame takes.
const HELD: usize = 16 << 20;

/// Lets the allocator hold on to memory that is freed, instead of handing it back to the system and asking for it anew in the
/// next frame, which took a fifth of a frame's time.
///
/// The allocator of the GNU C library raises what it holds on to by the greatest block it was ever given back (mallopt(3),
/// under `M_MMAP_THRESHOLD`); such a block is given back here. It is never written to, so it takes no memory. Other allocators do nothing of
/// the kind, and then this does nothing.
pub fn keep_freed_memory() {
    drop(black_box(Vec::<u8>::with_capacity(HELD)));
}
