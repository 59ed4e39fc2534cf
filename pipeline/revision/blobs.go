package revision

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"strconv"
	"strings"
	"sync"
)

// blobs reads the contents of files by their ids, one at a time, by two
// programs that go on until they are closed: one tells sizes, for what is too
// large is not read at all, and one gives the bytes.
type blobs struct {
	git    git
	mu     sync.Mutex
	sizes  *server
	bytes  *server
	err    error // the first that there was
	closed bool
}

// server is a git that answers requests.
type server struct {
	cmd  *exec.Cmd
	in   io.WriteCloser
	out  *bufio.Reader
	said bytes.Buffer
}

func (b *blobs) read(id string, most int) ([]byte, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.err != nil {
		return nil, b.err
	}
	content, err := b.ask(id, most)
	if ended := b.git.ctx.Err(); err != nil && ended != nil {
		err = ended
	}
	b.err = err
	return content, err
}

func (b *blobs) ask(id string, most int) ([]byte, error) {
	if b.closed {
		return nil, errors.New("the revision is closed")
	}
	size, err := b.start(&b.sizes, "--batch-check").request(id)
	if err != nil {
		return nil, err
	}
	if size > int64(most) {
		return bytes.Repeat([]byte(" "), most+1), nil
	}
	s := b.start(&b.bytes, "--batch")
	if _, err := s.request(id); err != nil {
		return nil, err
	}
	content := make([]byte, size+1) // a line break follows
	if _, err := io.ReadFull(s.out, content); err != nil {
		return nil, s.failure(err)
	}
	return content[:size], nil
}

// start starts a server if it is not running. One that does not start answers
// nothing.
func (b *blobs) start(s **server, mode string) *server {
	if *s != nil {
		return *s
	}
	*s = &server{cmd: b.git.command("cat-file", mode), out: bufio.NewReader(strings.NewReader(""))}
	c := (*s).cmd
	c.Stderr = &(*s).said
	in, err := c.StdinPipe()
	if err != nil {
		return *s
	}
	out, err := c.StdoutPipe()
	if err != nil {
		return *s
	}
	(*s).in, (*s).out = in, bufio.NewReader(out)
	if err := c.Start(); err != nil {
		fmt.Fprintln(&(*s).said, err)
	}
	return *s
}

// request asks for a file and gives its size, as the answer begins: "id blob
// size".
func (s *server) request(id string) (int64, error) {
	if s.in == nil {
		return 0, s.failure(errors.New("it cannot be started"))
	}
	if _, err := io.WriteString(s.in, id+"\n"); err != nil {
		return 0, s.failure(err)
	}
	line, err := s.out.ReadString('\n')
	if err != nil {
		return 0, s.failure(err)
	}
	fields := strings.Fields(line)
	if len(fields) == 2 && fields[1] == "missing" {
		return 0, &Error{"this clone does not hold it", "fetch it with git fetch --refetch, or clone without a filter"}
	}
	if len(fields) != 3 || fields[0] != id || fields[1] != "blob" {
		return 0, s.failure(fmt.Errorf("the answer %q is not about a file", strings.TrimSpace(line)))
	}
	size, err := strconv.ParseInt(fields[2], 10, 64)
	if err != nil {
		return 0, s.failure(err)
	}
	return size, nil
}

func (s *server) failure(err error) error {
	s.stop() // so that all that it said is there
	return failure{"cat-file", firstLine(s.said.String()), err}
}

func (s *server) stop() {
	if s.in == nil {
		return
	}
	s.in.Close()
	if s.cmd.Process != nil {
		s.cmd.Process.Kill()
		s.cmd.Wait()
	}
	s.in = nil
}

func (b *blobs) failed() error {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.err
}

func (b *blobs) close() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.closed = true
	for _, s := range []*server{b.sizes, b.bytes} {
		if s != nil {
			s.stop()
		}
	}
}
