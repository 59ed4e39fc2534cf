// Command container packs released programs for Linux as a container image: an
// OCI image layout (Open Container Initiative, Image Format Specification 1.1)
// that any tool of containers takes, for every machine whose archive there is.
//
//	go run ./scripts/release dist
//	go run ./scripts/container dist image
//	skopeo copy --all oci:image:v0.1.0 docker://registry.example.org/yardproof:v0.1.0
//
// The image holds the program of the archive and its licence, and nothing else:
// no shell, no libraries, no user but the number that it runs as. It works in
// /work, where the plans are to be:
//
//	docker run --rm --user "$(id -u)" --volume "$PWD:/work" yardproof check .
//
// Only an archive of the sum in SHA256SUMS is packed. The same archives give the
// same bytes anywhere, and no daemon is needed. --changed-since is of no use in
// it, for there is no git.
//
// Start reading at pack in main.go; archive.go reads archives.
package main
