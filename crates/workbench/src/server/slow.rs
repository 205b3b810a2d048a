//! Connections that do not let one slow client hold a place for ever: what is asked must have come, and the answer begun,
//! within a time counted from the last byte sent; only so many at once.

use std::io;
use std::net::SocketAddr;
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};
use std::time::Duration;
use tokio::io::{AsyncRead, AsyncWrite, ReadBuf};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::{Instant, Sleep};

/// Listens, with a limit of connections.
pub struct Patient {
    inner: TcpListener,
    places: Arc<Semaphore>,
    patience: Duration,
}

impl Patient {
    /// Around a listener.
    #[must_use]
    pub fn new(inner: TcpListener, most: usize, patience: Duration) -> Patient {
        Patient { inner, places: Arc::new(Semaphore::new(most)), patience }
    }
}

impl axum::serve::Listener for Patient {
    type Io = Timed;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Timed, SocketAddr) {
        loop {
            let Ok(place) = Arc::clone(&self.places).acquire_owned().await else {
                std::future::pending::<()>().await;
                continue;
            };
            match self.inner.accept().await {
                Ok((stream, address)) => {
                    // Small answers should not wait for more.
                    let _ = stream.set_nodelay(true);
                    let clock = Box::pin(tokio::time::sleep(self.patience));
                    return (Timed { stream, clock, patience: self.patience, _place: place }, address);
                }
                // Out of file handles, or the client went away: others may fare better in a moment.
                Err(_) => tokio::time::sleep(Duration::from_millis(50)).await,
            }
        }
    }

    fn local_addr(&self) -> io::Result<SocketAddr> {
        self.inner.local_addr()
    }
}

/// A connection with a clock.
pub struct Timed {
    stream: TcpStream,
    clock: Pin<Box<Sleep>>,
    patience: Duration,
    _place: OwnedSemaphorePermit,
}

impl Timed {
    fn out_of_time(&mut self, context: &mut Context<'_>) -> bool {
        self.clock.as_mut().poll(context).is_ready()
    }

    fn wrote(&mut self) {
        let next = Instant::now() + self.patience;
        self.clock.as_mut().reset(next);
    }
}

impl AsyncRead for Timed {
    fn poll_read(mut self: Pin<&mut Self>, context: &mut Context<'_>, into: &mut ReadBuf<'_>) -> Poll<io::Result<()>> {
        if self.out_of_time(context) {
            return Poll::Ready(Err(io::ErrorKind::TimedOut.into()));
        }
        Pin::new(&mut self.stream).poll_read(context, into)
    }
}

impl AsyncWrite for Timed {
    fn poll_write(mut self: Pin<&mut Self>, context: &mut Context<'_>, bytes: &[u8]) -> Poll<io::Result<usize>> {
        let written = Pin::new(&mut self.stream).poll_write(context, bytes);
        match &written {
            Poll::Ready(Ok(_)) => self.wrote(),
            Poll::Pending if self.out_of_time(context) => return Poll::Ready(Err(io::ErrorKind::TimedOut.into())),
            _ => {}
        }
        written
    }

    fn poll_flush(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_flush(context)
    }

    fn poll_shutdown(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_shutdown(context)
    }
}
