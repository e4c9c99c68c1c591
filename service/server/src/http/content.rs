//! Content with its digest, and how it is handed to the transport: what is long in pieces,
//! so that other connections of the thread are served between them.

use std::convert::Infallible;
use std::pin::Pin;
use std::task::{Context, Poll};

use actix_web::body::{BodySize, BoxBody, MessageBody};
use actix_web::web::Bytes;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The transport copies a body that comes whole in one go. A piece of this size takes it
/// some 20 microseconds; common answers are one piece.
const PIECE_BYTES: usize = 128 * 1024;

/// Content and its digest (RFC 9530). Taking the digest of megabytes takes milliseconds:
/// where content is long, make this on the pool.
pub struct Content {
    bytes: Bytes,
    digest: String,
}

impl Content {
    /// Takes the digest.
    pub fn new(bytes: Vec<u8>) -> Self {
        let digest = digest(Sha256::digest(&bytes).as_slice());
        Self {
            bytes: bytes.into(),
            digest,
        }
    }

    /// The digest as the header carries it.
    pub fn digest(&self) -> &str {
        &self.digest
    }

    /// The bytes as the transport takes them.
    pub fn into_body(self) -> BoxBody {
        if self.bytes.len() <= PIECE_BYTES {
            return BoxBody::new(self.bytes);
        }
        BoxBody::new(Pieces {
            rest: self.bytes,
            paused: false,
        })
    }
}

/// A digest as a header carries it.
pub fn digest(sha256: &[u8]) -> String {
    format!("sha-256=:{}:", STANDARD.encode(sha256))
}

/// A long body. It gives way after each piece: a client that takes as fast as it is sent
/// would keep the thread to itself.
struct Pieces {
    rest: Bytes,
    paused: bool,
}

impl MessageBody for Pieces {
    type Error = Infallible;

    fn size(&self) -> BodySize {
        BodySize::Sized(self.rest.len() as u64)
    }

    fn poll_next(
        mut self: Pin<&mut Self>,
        cx: &mut Context<'_>,
    ) -> Poll<Option<Result<Bytes, Infallible>>> {
        if self.rest.is_empty() {
            return Poll::Ready(None);
        }
        self.paused = !self.paused;
        if self.paused {
            cx.waker().wake_by_ref();
            return Poll::Pending;
        }
        let long = self.rest.len().min(PIECE_BYTES);
        Poll::Ready(Some(Ok(self.rest.split_to(long))))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::task::Waker;

    /// Everything a body gives, and how often it gave way.
    fn drained(content: Content) -> (Vec<Bytes>, usize) {
        let mut body = content.into_body();
        let mut cx = Context::from_waker(Waker::noop());
        let (mut pieces, mut pauses) = (Vec::new(), 0);
        loop {
            match Pin::new(&mut body).poll_next(&mut cx) {
                Poll::Ready(Some(piece)) => pieces.push(piece.expect("a piece")),
                Poll::Ready(None) => return (pieces, pauses),
                Poll::Pending => pauses += 1,
            }
        }
    }

    #[test]
    fn content_arrives_whole_and_long_content_gives_way() {
        for (long, count) in [
            (1, 1),
            (PIECE_BYTES, 1),
            (PIECE_BYTES + 1, 2),
            (5 * PIECE_BYTES, 5),
            (5 * PIECE_BYTES + 7, 6),
        ] {
            let bytes: Vec<u8> = (0..long).map(|i| (i % 251) as u8).collect();
            let content = Content::new(bytes.clone());
            let told = digest(Sha256::digest(&bytes).as_slice());
            assert_eq!(content.digest(), told);
            assert_eq!(
                content.into_body().size(),
                BodySize::Sized(long as u64),
                "{long}"
            );
            let (pieces, pauses) = drained(Content::new(bytes.clone()));
            assert_eq!(pieces.concat(), bytes, "{long}");
            assert_eq!(pieces.len(), count, "{long}");
            assert_eq!(pauses, if count == 1 { 0 } else { count }, "{long}");
            assert!(pieces.iter().all(|piece| piece.len() <= PIECE_BYTES));
        }
    }
}
