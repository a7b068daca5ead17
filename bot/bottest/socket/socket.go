// Package socket is the server's end of a WebSocket, for fakes of platforms.
package socket

import (
	"bufio"
	"crypto/sha1"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"time"
)

// Conn is the server's end of a WebSocket (RFC 6455), as much of it as a
// platform of text messages needs: no extensions, no messages in parts from us.
type Conn struct {
	conn net.Conn
	r    *bufio.Reader

	mu sync.Mutex // one frame at a time goes out
}

// Frame opcodes.
const (
	opContinue = 0x0
	opText     = 0x1
	opClose    = 0x8
	opPing     = 0x9
	opPong     = 0xA
)

// maxFrame is the longest frame that is read.
const maxFrame = 1 << 20

// Upgrade answers the handshake.
func Upgrade(w http.ResponseWriter, r *http.Request) (*Conn, error) {
	key := r.Header.Get("Sec-WebSocket-Key")
	if key == "" || !strings.EqualFold(r.Header.Get("Upgrade"), "websocket") {
		http.Error(w, "this is a WebSocket", http.StatusUpgradeRequired)
		return nil, errors.New("no WebSocket handshake")
	}
	conn, rw, err := http.NewResponseController(w).Hijack()
	if err != nil {
		return nil, err
	}
	sum := sha1.Sum([]byte(key + "258EAFA5-E914-47DA-95CA-C5AB0DC85B11")) // the protocol's own constant
	_, err = fmt.Fprintf(conn, "HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: %s\r\n\r\n",
		base64.StdEncoding.EncodeToString(sum[:]))
	if err != nil {
		_ = conn.Close()
		return nil, err
	}
	return &Conn{conn: conn, r: rw.Reader}, nil
}

// Send sends a text message, in one frame.
func (c *Conn) Send(data []byte) error { return c.write(opText, data) }

// Ping asks the client whether it is there.
func (c *Conn) Ping() error { return c.write(opPing, []byte("still here")) }

// Close ends the connection with a code.
func (c *Conn) Close(code int, why string) {
	_ = c.write(opClose, append(binary.BigEndian.AppendUint16(nil, uint16(code)), why...))
	c.Cut()
}

// Cut ends the connection without a word.
func (c *Conn) Cut() { _ = c.conn.Close() }

// write sends one frame.
func (c *Conn) write(op byte, data []byte) error {
	head := []byte{0x80 | op}
	switch n := len(data); {
	case n < 126:
		head = append(head, byte(n))
	case n < 1<<16:
		head = binary.BigEndian.AppendUint16(append(head, 126), uint16(n))
	default:
		head = binary.BigEndian.AppendUint64(append(head, 127), uint64(n))
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if err := c.conn.SetWriteDeadline(time.Now().Add(5 * time.Second)); err != nil {
		return err
	}
	_, err := c.conn.Write(append(head, data...))
	return err
}

// Read gives the next text message; pings are answered on the way. It counts
// the frames that the message came in.
func (c *Conn) Read() (data []byte, frames int, err error) {
	for {
		op, final, part, err := c.frame()
		if err != nil {
			return nil, 0, err
		}
		switch op {
		case opText, opContinue:
			if len(data)+len(part) > maxFrame {
				return nil, 0, errors.New("a message that is too long")
			}
			data = append(data, part...)
			frames++
			if final {
				return data, frames, nil
			}
		case opPing:
			if err := c.write(opPong, part); err != nil {
				return nil, 0, err
			}
		case opPong:
		case opClose:
			_ = c.write(opClose, part)
			return nil, 0, io.EOF
		default:
			return nil, 0, fmt.Errorf("opcode %#x", op)
		}
	}
}

func (c *Conn) frame() (op byte, final bool, data []byte, err error) {
	var head [2]byte
	if _, err = io.ReadFull(c.r, head[:]); err != nil {
		return 0, false, nil, err
	}
	n := uint64(head[1] & 0x7f)
	switch n {
	case 126:
		var b [2]byte
		if _, err = io.ReadFull(c.r, b[:]); err != nil {
			return 0, false, nil, err
		}
		n = uint64(binary.BigEndian.Uint16(b[:]))
	case 127:
		var b [8]byte
		if _, err = io.ReadFull(c.r, b[:]); err != nil {
			return 0, false, nil, err
		}
		n = binary.BigEndian.Uint64(b[:])
	}
	if head[1]&0x80 == 0 || n > maxFrame {
		return 0, false, nil, errors.New("a frame that is not masked, or too long")
	}
	var mask [4]byte
	if _, err = io.ReadFull(c.r, mask[:]); err != nil {
		return 0, false, nil, err
	}
	data = make([]byte, n)
	if _, err = io.ReadFull(c.r, data); err != nil {
		return 0, false, nil, err
	}
	for i := range data {
		data[i] ^= mask[i%4]
	}
	return head[0] & 0x0f, head[0]&0x80 != 0, data, nil
}
