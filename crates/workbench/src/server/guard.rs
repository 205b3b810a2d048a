//! Who may ask. A page of another site can make a browser send requests here: the host's name and, for whatever changes
//! something, the origin must be our own. On a network a token is asked for besides.

use super::Bench;
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use std::fmt::Write as _;
use std::sync::Arc;

/// Who may ask what.
#[derive(Clone, Debug, Default)]
pub struct Guard {
    /// Hosts as a browser names them, with port: `127.0.0.1:8000`.
    pub hosts: Vec<String>,
    /// The token of a server open to a network. With it any host's name is admitted, with our port: what a person types to
    /// reach this machine (a name, one of several addresses) cannot be known here, and a name that another site turned
    /// towards us brings neither the token nor our cookie, which belongs to the name under which the token was shown.
    pub token: Option<String>,
    /// The port.
    pub port: u16,
}

const COOKIE: &str = "fairwake-token";
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; \
                      form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// A token nobody can guess.
///
/// # Errors
/// When the system has no randomness to give.
pub fn token() -> std::io::Result<String> {
    let mut bytes = [0_u8; 24];
    getrandom::fill(&mut bytes).map_err(|error| std::io::Error::other(error.to_string()))?;
    Ok(bytes.iter().fold(String::new(), |mut text, byte| {
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
        text
    }))
}

/// The value of a cookie.
pub(super) fn cookie<'a>(headers: &'a HeaderMap, name: &str) -> Option<&'a str> {
    headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|text| text.split(';'))
        .find_map(|pair| {
            let (key, value) = pair.trim().split_once('=')?;
            (key == name).then_some(value)
        })
}

/// As long for a wrong token as for a right one.
fn same(a: &str, b: &str) -> bool {
    a.len() == b.len() && a.bytes().zip(b.bytes()).fold(0, |differs, (a, b)| differs | (a ^ b)) == 0
}

impl Guard {
    fn host_is_ours(&self, headers: &HeaderMap) -> bool {
        let mut hosts = headers.get_all(header::HOST).iter();
        let host = hosts.next().and_then(|host| host.to_str().ok()).unwrap_or_default();
        hosts.next().is_none() && self.answers_as(host)
    }

    fn answers_as(&self, host: &str) -> bool {
        self.hosts.iter().any(|ours| ours.eq_ignore_ascii_case(host)) || (self.token.is_some() && self.could_be(host))
    }

    /// A name or an address, and our port.
    fn could_be(&self, host: &str) -> bool {
        let (name, port) = match host.rsplit_once(':') {
            Some((name, port)) if !port.ends_with(']') => (name, port),
            // A browser leaves the usual port out.
            _ => (host, "80"),
        };
        let plain = |c: char| c.is_ascii_alphanumeric() || "-._".contains(c);
        let name_or_address = match name.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')) {
            Some(address) => address.parse::<std::net::Ipv6Addr>().is_ok(),
            None => !name.is_empty() && name.len() <= 253 && name.chars().all(plain),
        };
        name_or_address && port.parse() == Ok(self.port)
    }

    fn origin_is_ours(&self, headers: &HeaderMap) -> bool {
        let text = |name: &str| headers.get(name).map(|value| value.to_str().unwrap_or("?").to_owned());
        let host = text("host").unwrap_or_default();
        // Listed names are one server; another must be the very name that is asked.
        let origin = text("origin").is_none_or(|origin| {
            origin.strip_prefix("http://").is_some_and(|o| {
                o.eq_ignore_ascii_case(&host) || self.hosts.iter().any(|ours| ours.eq_ignore_ascii_case(o))
            })
        });
        let site = text("sec-fetch-site").is_none_or(|site| site == "same-origin" || site == "none");
        origin && site
    }
}

fn refuse(status: StatusCode, why: &'static str) -> Response {
    (status, [(header::CONTENT_TYPE, "text/plain; charset=utf-8")], why).into_response()
}

/// Stands before every route.
pub async fn guard(State(bench): State<Arc<Bench>>, request: Request, next: Next) -> Response {
    let mut response = admitted(&bench.guard, request, next).await;
    let headers = response.headers_mut();
    for (name, value) in [
        ("x-content-type-options", "nosniff"),
        ("x-frame-options", "DENY"),
        // Not `no-referrer`: with it a browser sends forms without an origin.
        ("referrer-policy", "same-origin"),
        ("cross-origin-resource-policy", "same-origin"),
        ("cross-origin-opener-policy", "same-origin"),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    // A paper brings a policy of its own, no wider than its own style.
    headers.entry(header::CONTENT_SECURITY_POLICY).or_insert(HeaderValue::from_static(POLICY));
    headers.entry(header::CACHE_CONTROL).or_insert(HeaderValue::from_static("no-store"));
    response
}

async fn admitted(guard: &Guard, request: Request, next: Next) -> Response {
    if !guard.host_is_ours(request.headers()) {
        return refuse(StatusCode::MISDIRECTED_REQUEST, "This server answers under its own address only.\n");
    }
    let reads = matches!(*request.method(), Method::GET | Method::HEAD);
    if !reads && !guard.origin_is_ours(request.headers()) {
        return refuse(StatusCode::FORBIDDEN, "A page of another site may not change anything here.\n");
    }
    if let Some(token) = &guard.token {
        let shown = cookie(request.headers(), COOKIE).is_some_and(|given| same(given, token));
        if !shown {
            let query = request.uri().query().unwrap_or_default();
            let given = query.split('&').find_map(|pair| pair.strip_prefix("token="));
            if !given.is_some_and(|given| same(given, token)) {
                return refuse(
                    StatusCode::UNAUTHORIZED,
                    "Open the address with its token, as the program printed it.\n",
                );
            }
            let cookie = format!("{COOKIE}={token}; HttpOnly; SameSite=Strict; Path=/");
            let to = Redirect::to("/");
            return ([(header::SET_COOKIE, cookie)], to).into_response();
        }
    }
    next.run(request).await
}
