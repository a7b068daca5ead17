# One static binary on an empty base. Build:  docker build -t netpost .
# Run:  docker run -v netpost-data:/data -v ./notes:/data/notes:ro --env-file .env netpost

FROM golang:1.26.8 AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -buildvcs=false -ldflags='-s -w' -o /out/netpost . \
 && mkdir -p /out/data

FROM scratch
# Certificate authorities for the chat platforms' TLS; time zones for the crew's week.
COPY --from=build /etc/ssl/certs/ca-certificates.crt /etc/ssl/certs/ca-certificates.crt
COPY --from=build /usr/local/go/lib/time/zoneinfo.zip /usr/share/zoneinfo.zip
ENV ZONEINFO=/usr/share/zoneinfo.zip
COPY --from=build /out/netpost /usr/local/bin/netpost
# The store, the index and the settings live in /data; a new volume takes over this owner.
COPY --from=build --chown=65532:65532 /out/data /data
ENV HOME=/data TMPDIR=/data
WORKDIR /data
VOLUME /data
USER 65532:65532
ENTRYPOINT ["/usr/local/bin/netpost"]
CMD ["serve"]
