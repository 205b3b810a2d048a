//! Routes, and who may ask.

mod assets;
mod change;
mod guard;
mod handed;
mod import;
mod log;
mod reading;
mod show;
mod slow;
mod verdict;

pub use guard::{Guard, token};
pub use handed::Gathered;
pub use log::Said as LogSaid;
pub use slow::Patient;
pub use verdict::{Said, Verdicts};

use crate::follows::Crowds;
use crate::pages::Look;
use crate::store::{Folder, Name};
use crate::views::{Jobs, Views};
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use axum::routing::{get, post};
use maud::Markup;
use std::io;
use std::net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr};
use std::sync::Arc;
use std::time::Duration;
use words::Language;

/// Longest request body, bytes: a season of logs.
const LONGEST_BODY: usize = 16 << 20;
/// Connections at once.
const CONNECTIONS: usize = 256;
/// Threads that read the disk and compute.
const BLOCKING: usize = 12;
/// How long a request may take to come, or an answer to begin.
const PATIENCE: Duration = Duration::from_secs(60);

/// What the routes share.
pub struct Bench {
    /// The jobs.
    pub folder: Folder,
    /// Who may ask.
    pub guard: Guard,
    /// Judgements already made.
    pub verdicts: Verdicts,
    /// Weighed crowds of the jobs at hand.
    pub crowds: Arc<Crowds>,
    /// Answers the papers are drawn up from.
    pub gathered: Gathered,
    /// How large a crowd is drawn.
    pub options: counsel::Options,
}

impl Bench {
    /// A folder served to those a guard admits.
    #[must_use]
    pub fn new(folder: Folder, guard: Guard, options: counsel::Options) -> Bench {
        let crowds = Arc::new(Crowds::new(options));
        Bench { folder, guard, verdicts: Verdicts::default(), crowds, gathered: Gathered::default(), options }
    }
}

type Shared = Arc<Bench>;

/// The routes.
pub fn app(bench: Arc<Bench>) -> Router {
    let views = Views::new(Arc::clone(&bench) as Arc<dyn Jobs>, Arc::clone(&bench.crowds), bench.options);
    let own = Router::new()
        .route("/", get(show::jobs))
        .route("/new", get(show::new).post(change::new))
        .route("/import", post(import::import))
        .route("/settings", post(change::settings))
        .route("/jobs/{name}", get(show::job))
        .route("/jobs/{name}/verdict", get(show::verdict))
        .route("/jobs/{name}/set", post(change::set))
        .route("/jobs/{name}/drawing", post(change::drawing))
        .route("/jobs/{name}/undo", post(change::undo))
        .route("/jobs/{name}/history", get(show::history))
        .route("/jobs/{name}/restore", post(change::restore))
        .route("/jobs/{name}/duplicate", post(change::duplicate))
        .route("/jobs/{name}/file", get(show::file))
        .route("/jobs/{name}/log", get(log::show).post(log::bring))
        .route("/jobs/{name}/log/take", post(log::take))
        .route("/jobs/{name}/papers", get(handed::papers))
        .route("/jobs/{name}/papers/{kind}", get(handed::paper))
        .route("/assets/{file}", get(assets::asset))
        .with_state(Arc::clone(&bench));
    own.merge(views.router())
        .fallback(|| async { missing() })
        .layer(DefaultBodyLimit::max(LONGEST_BODY))
        .layer(axum::middleware::from_fn_with_state(bench, guard::guard))
}

/// Where to listen.
#[derive(Clone, Copy, Debug, Default)]
pub struct Listen {
    /// An address of a network; loopback when left out.
    pub host: Option<IpAddr>,
    /// A port; any free one when left out.
    pub port: u16,
}

/// A bound server, not yet answering.
pub struct Bound {
    listener: std::net::TcpListener,
    app: Router,
    /// What to open in a browser.
    pub address: String,
    /// How long a request may take to come, or an answer to begin.
    pub patience: Duration,
}

/// The address under which others of the network reach this machine: the one it would send from. Nothing is sent.
fn own_address(any: IpAddr) -> IpAddr {
    // Addresses set apart for documentation (RFC 5737, RFC 3849): routed like any other, and nobody's.
    let (from, far, near): (&str, &str, IpAddr) = match any {
        IpAddr::V4(_) => ("0.0.0.0:0", "192.0.2.1:9", Ipv4Addr::LOCALHOST.into()),
        IpAddr::V6(_) => ("[::]:0", "[2001:db8::1]:9", Ipv6Addr::LOCALHOST.into()),
    };
    let asked = std::net::UdpSocket::bind(from).and_then(|socket| {
        socket.connect(far)?;
        socket.local_addr()
    });
    // Without a network there is still this machine.
    asked.map_or(near, |address| address.ip())
}

/// Takes a port for a folder.
///
/// # Errors
/// What the system said.
pub fn bind(folder: Folder, listen: Listen, options: counsel::Options) -> io::Result<Bound> {
    let ip = listen.host.unwrap_or(IpAddr::V4(Ipv4Addr::LOCALHOST));
    let listener = std::net::TcpListener::bind(SocketAddr::new(ip, listen.port))?;
    listener.set_nonblocking(true)?;
    let at = listener.local_addr()?;
    let port = at.port();
    let mut hosts = vec![at.to_string()];
    let token = if ip.is_loopback() { None } else { Some(token()?) };
    if ip.is_loopback() || ip.is_unspecified() {
        hosts.extend([format!("127.0.0.1:{port}"), format!("localhost:{port}"), format!("[::1]:{port}")]);
    }
    let query = token.as_ref().map(|token| format!("?token={token}")).unwrap_or_default();
    let reached = if ip.is_unspecified() { SocketAddr::new(own_address(ip), port) } else { at };
    let address = format!("http://{reached}/{query}");
    let bench = Bench::new(folder, Guard { hosts, token, port }, options);
    Ok(Bound { listener, app: app(Arc::new(bench)), address, patience: PATIENCE })
}

impl Bound {
    /// Answers until `stop` comes, then finishes what is under way.
    ///
    /// # Errors
    /// What the system said.
    pub async fn serve(self, stop: impl Future<Output = ()> + Send + 'static) -> io::Result<()> {
        let listener = tokio::net::TcpListener::from_std(self.listener)?;
        let patient = Patient::new(listener, CONNECTIONS, self.patience);
        axum::serve(patient, self.app).with_graceful_shutdown(stop).await
    }

    /// Answers until the program is interrupted.
    ///
    /// # Errors
    /// What the system said.
    pub fn run(self) -> io::Result<()> {
        let runtime = tokio::runtime::Builder::new_multi_thread()
            .worker_threads(2)
            // Work is done by two cores: more threads would only take memory, each with a pool of its own.
            .max_blocking_threads(BLOCKING)
            .enable_all()
            .build()?;
        let served = runtime.block_on(async {
            // An open page keeps its connection: those are not waited for longer than a moment.
            let (gone, mut seen) = tokio::sync::watch::channel(false);
            let stop = async move {
                let _ = tokio::signal::ctrl_c().await;
                let _ = gone.send(true);
            };
            let late = async move {
                let _ = seen.changed().await;
                tokio::time::sleep(Duration::from_secs(2)).await;
            };
            tokio::select! {
                served = self.serve(stop) => served,
                () = late => Ok(()),
            }
        });
        runtime.shutdown_timeout(Duration::from_secs(1));
        served
    }
}

/// For whom a page is laid out: cookies first, then what the browser speaks.
fn look(headers: &HeaderMap) -> Look {
    let spoken = headers.get(header::ACCEPT_LANGUAGE).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let language = guard::cookie(headers, "fairwake-language")
        .and_then(Language::of_tag)
        .or_else(|| spoken.split([',', ';']).find_map(|tag| Language::of_tag(tag.trim())))
        .unwrap_or_default();
    Look { language, imperial: guard::cookie(headers, "fairwake-units") == Some("imperial") }
}

fn missing() -> Response {
    (StatusCode::NOT_FOUND, [(header::CONTENT_TYPE, "text/plain; charset=utf-8")], "There is no such page.\n")
        .into_response()
}

fn page(markup: Markup) -> Response {
    Html(markup.into_string()).into_response()
}

/// Runs work that reads the disk or computes, away from the thread that answers others.
async fn away(work: impl FnOnce() -> io::Result<Response> + Send + 'static) -> Response {
    match tokio::task::spawn_blocking(work).await {
        Ok(Ok(response)) => response,
        Ok(Err(error)) if error.kind() == io::ErrorKind::NotFound => missing(),
        Ok(Err(error)) => {
            let kind = [(header::CONTENT_TYPE, "text/plain; charset=utf-8")];
            (StatusCode::INTERNAL_SERVER_ERROR, kind, format!("It could not be done: {error}.\n")).into_response()
        }
        Err(_) => StatusCode::INTERNAL_SERVER_ERROR.into_response(),
    }
}

/// A name out of an address.
fn named(text: &str) -> io::Result<Name> {
    Name::of(text).ok_or_else(|| io::ErrorKind::NotFound.into())
}
