//! The client: building one, sending a call, trying again when the service is busy.

use std::time::Duration;

use bearwell_engine::contract::{Answer, Call, Noun};
use bearwell_engine::{
    corrosion, drag_force, footing, forecast, frost, frost_depth, ground_heave, helix, job, layout,
    load_test, record, relocation, torque,
};
use reqwest::header::{ACCEPT, CONTENT_TYPE, RETRY_AFTER};
use serde::de::DeserializeOwned;

use crate::error::{Error, Problem};

const JSON: &str = "application/json";

/// A client of one service. Cheap to clone; clones share their connections.
#[derive(Debug, Clone)]
pub struct Client {
    http: reqwest::Client,
    base: String,
    attempts: u32,
    longest_wait: Duration,
}

/// Settings of a client.
#[derive(Debug, Clone)]
pub struct Builder {
    base: String,
    timeout: Duration,
    connect_timeout: Duration,
    attempts: u32,
    longest_wait: Duration,
}

impl Builder {
    /// Longest time for one attempt, from connecting to the last byte; 30 s when left out.
    pub fn timeout(mut self, timeout: Duration) -> Self {
        self.timeout = timeout;
        self
    }

    /// Longest time for connecting; 5 s when left out.
    pub fn connect_timeout(mut self, timeout: Duration) -> Self {
        self.connect_timeout = timeout;
        self
    }

    /// How often a call is sent at most while the service is busy (429 or 503); 3 when
    /// left out, at least 1.
    pub fn attempts(mut self, attempts: u32) -> Self {
        self.attempts = attempts.max(1);
        self
    }

    /// Longest wait between two attempts, whatever the service asks for; 30 s when left
    /// out.
    pub fn longest_wait(mut self, wait: Duration) -> Self {
        self.longest_wait = wait;
        self
    }

    /// The client.
    pub fn build(self) -> Result<Client, Error> {
        let http = reqwest::Client::builder()
            .timeout(self.timeout)
            .connect_timeout(self.connect_timeout)
            .user_agent(concat!("bearwell-client/", env!("CARGO_PKG_VERSION")))
            .build()?;
        Ok(Client {
            http,
            base: self.base,
            attempts: self.attempts,
            longest_wait: self.longest_wait,
        })
    }
}

macro_rules! calculations {
    ($($method:ident: $noun:ty, $request:ty => $outcome:ty, $about:literal;)+) => {
        impl Client { $(
            #[doc = $about]
            pub async fn $method(
                &self,
                call: impl Into<Call<$request>>,
            ) -> Result<Answer<$outcome>, Error> {
                self.calculate::<$noun>(&call.into()).await
            }
        )+ }
    };
}

calculations! {
    helix_capacity: helix::HelixCapacity, helix::Request => helix::Outcome,
        "Capacity of a helical pile from the soil: bearing, cylinder, uplift.";
    torque_capacity: torque::TorqueCapacity, torque::Request => torque::Outcome,
        "Capacity from installation torque, and back.";
    frost_embedment: frost::FrostEmbedment, frost::Request => frost::Outcome,
        "Embedment below frost, and uplift by frost.";
    frost_depth: frost_depth::FrostPenetration, frost_depth::Request => frost_depth::Outcome,
        "How deep the ground freezes by its freezing index, beside the jurisdiction's depth.";
    ground_heave: ground_heave::GroundHeave, ground_heave::Request => ground_heave::Outcome,
        "How far the ground comes up by freezing and by swelling.";
    drag_force: drag_force::DragForce, drag_force::Request => drag_force::Outcome,
        "Ground that settles round the shaft: neutral plane, drag force, and the steel.";
    corrosion_loss: corrosion::CorrosionLoss, corrosion::Request => corrosion::Outcome,
        "Steel lost to the ground over a life, and the section left.";
    pile_layout: layout::PileLayout, layout::Request => layout::Outcome,
        "Where the piles go along grade beams, and what they carry.";
    pile_relocation: relocation::PileRelocation, relocation::Request => relocation::Outcome,
        "What changes when piles cannot go where they were drawn, and the ways out.";
    footing_bearing: footing::FootingBearing, footing::Request => footing::Outcome,
        "What the soil under a dug footing bears, by the classical theories.";
    load_test: load_test::LoadTest, load_test::Request => load_test::Outcome,
        "Failure load of a static load test, and the torque factor of the site.";
    installation_record: record::InstallationRecord, record::Request => record::Outcome,
        "The log of a pile, judged: may it stay, must it go deeper, what its record lacks.";
    installation_job: job::InstallationJob, job::Request => job::Outcome,
        "The piles of a job judged together, and what one failed pile means for the rest.";
    length_forecast: forecast::LengthForecast, forecast::Request => forecast::Outcome,
        "From the first logs: how deep the other piles will go, and what to have on the truck.";
}

impl Client {
    /// A client with the usual settings.
    pub fn new(base_url: impl Into<String>) -> Result<Self, Error> {
        Self::builder(base_url).build()
    }

    /// Settings of a client of the service at this address.
    pub fn builder(base_url: impl Into<String>) -> Builder {
        Builder {
            base: base_url.into().trim_end_matches('/').to_owned(),
            timeout: Duration::from_secs(30),
            connect_timeout: Duration::from_secs(5),
            attempts: 3,
            longest_wait: Duration::from_secs(30),
        }
    }

    /// Asks any calculation.
    pub async fn calculate<N: Noun>(
        &self,
        call: &Call<N::Request>,
    ) -> Result<Answer<N::Outcome>, Error> {
        let body = serde_json::to_vec(call).map_err(Error::Unwritable)?;
        read(&self.post(&format!("/v1/{}", N::NAME), body, JSON).await?)
    }

    /// A drawing or table of an answer, as bytes of the media type asked for.
    pub async fn sheet<N: Noun>(
        &self,
        call: &Call<N::Request>,
        media: &str,
    ) -> Result<Vec<u8>, Error> {
        let body = serde_json::to_vec(call).map_err(Error::Unwritable)?;
        self.post(&format!("/v1/{}", N::NAME), body, media).await
    }

    /// Sends a body until it is answered, refused, or the attempts are used up.
    pub(crate) async fn post(
        &self,
        path: &str,
        body: Vec<u8>,
        accept: &str,
    ) -> Result<Vec<u8>, Error> {
        let url = format!("{}{path}", self.base);
        let mut left = self.attempts;
        loop {
            left -= 1;
            let request = self.http.post(&url).header(CONTENT_TYPE, JSON);
            let response = request
                .header(ACCEPT, accept)
                .body(body.clone())
                .send()
                .await?;
            let status = response.status().as_u16();
            if response.status().is_success() {
                return Ok(response.bytes().await?.to_vec());
            }
            if left > 0 && (status == 429 || status == 503) {
                let asked = response.headers().get(RETRY_AFTER);
                let wait = wait(asked.and_then(|v| v.to_str().ok()));
                tokio::time::sleep(wait.min(self.longest_wait)).await;
                continue;
            }
            let bytes = response.bytes().await?;
            return Err(match serde_json::from_slice::<Problem>(&bytes) {
                Ok(problem) => Error::Problem(Box::new(problem)),
                Err(error) => Error::Unreadable {
                    status,
                    reason: error.to_string(),
                },
            });
        }
    }
}

/// Reads the bytes of a 2xx response.
pub(crate) fn read<T: DeserializeOwned>(bytes: &[u8]) -> Result<T, Error> {
    serde_json::from_slice(bytes).map_err(|error| Error::Unreadable {
        status: 200,
        reason: error.to_string(),
    })
}

/// The wait a service asks for in whole seconds; 1 s where it asks for none or for a date.
fn wait(retry_after: Option<&str>) -> Duration {
    let seconds = retry_after.and_then(|text| text.trim().parse().ok());
    Duration::from_secs(seconds.unwrap_or(1))
}

#[cfg(test)]
mod tests {
    use super::wait;
    use std::time::Duration;

    #[test]
    fn waits_as_long_as_asked() {
        assert_eq!(wait(Some("7")), Duration::from_secs(7));
        assert_eq!(wait(None), Duration::from_secs(1));
        let date = "Fri, 31 Dec 2027 23:59:59 GMT";
        assert_eq!(wait(Some(date)), Duration::from_secs(1));
    }
}
